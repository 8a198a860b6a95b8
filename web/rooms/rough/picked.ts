// The figure that the charts of a rough road draw, on the screen and on paper. It
// is no part of the document.

export const picked = { key: "tyre_load_rms_rear" };
