import { answer } from "./answer.ts";
import "./parts.ts";
import { printParts } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("parts", {
  answer,
  prints: [{ at: 80, body: printParts }],
});
