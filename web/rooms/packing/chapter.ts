import { gist } from "./packing.ts";
import { furnish } from "../../elements/room.ts";

furnish("packing", {
  gist,
});
