import { gist } from "./limits.ts";
import { printRatings } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("limits", {
  gist,
  prints: [{ at: 60, body: printRatings }],
});
