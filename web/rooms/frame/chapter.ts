import { answer } from "./answer.ts";
import "./frame.ts";
import { furnish } from "../../elements/room.ts";

furnish("frame", {
  answer,
});
