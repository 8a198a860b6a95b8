import { gist } from "./load.ts";
import { printLoads } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("load", {
  gist,
  prints: [{ at: 70, body: printLoads }],
});
