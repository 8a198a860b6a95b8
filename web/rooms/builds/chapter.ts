import "./builds.ts";
import { gist } from "./told.ts";
import { printAllParts, printBuilds } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("builds", {
  gist,
  prints: [
    { at: 55, body: printBuilds },
    { at: 81, body: printAllParts },
  ],
});
