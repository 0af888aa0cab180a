/** Quantities, gauges, colour codes. */
export { bundleShare, INSULATION_CELSIUS, ratedAmps, wireRise } from "./ampacity.js";
export { COLOURS, type Colour, colourHex, colourWords, formatColours } from "./colours.js";
export { type Metal, type SpreadOhms, type WireConductor, wireOhms } from "./conductor.js";
export { formatLength, parseLength } from "./length.js";
export { parseNumber } from "./number.js";
export { parseColours } from "./parse-colours.js";
export { bad, good, type Parsed } from "./parsed.js";
export { formatSize, parseSize } from "./size.js";
