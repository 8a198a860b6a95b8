// A photograph as it is kept: drawn anew, so that nothing is left of what the camera
// told beside the picture, and no larger than it need be.

import type { PictureSize } from "../model/types.ts";

const qualities = [0.86, 0.7, 0.5]; // of a JPEG file, until it is small enough
const most = 3_500_000; // bytes

export interface Redrawn {
  bytes: Uint8Array<ArrayBuffer>;
  width: number;
  height: number;
}

// redraw decodes a picture and draws it at the size that it is to be kept in. It
// throws when the browser cannot decode it.
export async function redraw(file: Blob, size: PictureSize): Promise<Redrawn> {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const canvas = document.createElement("canvas");
  try {
    // A camera that was held upright says so beside the picture.
    const upright = picture.width === size.height && picture.height === size.width;
    const { width, height } = size.keep;
    canvas.width = upright ? height : width;
    canvas.height = upright ? width : height;
    const paint = canvas.getContext("2d");
    if (!paint) throw new Error("no canvas");
    paint.fillStyle = "#fff"; // a JPEG file cannot be seen through
    paint.fillRect(0, 0, canvas.width, canvas.height);
    paint.imageSmoothingQuality = "high";
    paint.drawImage(picture, 0, 0, canvas.width, canvas.height);
    for (const quality of qualities) {
      const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
      if (blob?.type === "image/jpeg" && blob.size <= most) {
        return { bytes: new Uint8Array(await blob.arrayBuffer()), width: canvas.width, height: canvas.height };
      }
    }
    throw new Error("no JPEG");
  } finally {
    picture.close();
    canvas.width = canvas.height = 0; // large ones are given back at once
  }
}

// base64 writes bytes as text.
export function base64(bytes: Uint8Array): string {
  let s = "";
  for (let i = 0; i < bytes.length; i += 0x8000) s += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(s);
}

export const fromBase64 = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
