// Solves the programme in the file $2 with the package in the folder $1, to within
// the gap $3, for at most $4 seconds, and prints how it ended, the objective and the
// milliseconds that this took without loading.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const [web, file, gap, seconds] = process.argv.slice(2);
const highs = await createRequire(`${web}/package.json`)("highs")();
const text = readFileSync(file, "utf8");
const began = performance.now();
const answer = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: Number(gap), time_limit: Number(seconds), output_flag: false });
console.log(JSON.stringify({ status: answer.Status, objective: answer.ObjectiveValue, ms: performance.now() - began }));
