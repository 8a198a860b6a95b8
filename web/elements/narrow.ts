// Whether the sheet is narrow, as on a phone: charts are drawn smaller then, so that
// their letters stay legible.

export const narrow = matchMedia("(max-width: 44rem)");
