/** Quantities, gauges, colour codes. */
export { COLOURS, type Colour, colourHex, colourOf, colourWords, formatColours } from "./colours.js";
export {
	METALS,
	type Metal,
	mostOverSolid,
	type SpreadOhms,
	solidOhmsPerMetre,
	temperatureFactor,
	type WireConductor,
	wireOhms,
} from "./conductor.js";
export { formatLength, LONGEST_METRES, parseLength } from "./length.js";
export { parseNumber } from "./number.js";
export { parseColours } from "./parse-colours.js";
export { bad, good, type Parsed } from "./parsed.js";
export { awgDiameterMm, awgMm2, formatSize, nearestAwg, parseSize, SIZE_LIMITS_MM2 } from "./size.js";
