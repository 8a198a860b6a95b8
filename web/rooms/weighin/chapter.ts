import { gist } from "./weighin.ts";
import { furnish } from "../../elements/room.ts";

furnish("weighin", {
  gist,
});
