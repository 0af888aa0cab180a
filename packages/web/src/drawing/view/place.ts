/** Where a drawing stands in its frame: shift in px, scale in px per drawing unit. */

export interface Place {
	readonly x: number;
	readonly y: number;
	readonly scale: number;
}

export interface Size {
	readonly width: number;
	readonly height: number;
}

const LEAST = 0.15;
const MOST = 4;
/** Below this scale names cannot be read: a large drawing starts at its supply side instead of whole. */
const READABLE = 0.95;
const LARGEST_START = 1.15;

/** The whole drawing in the middle, or, where it would be too small to read, its top. */
export function fit(frame: Size, sheet: Size): Place {
	const whole = Math.min(frame.width / (sheet.width || 1), frame.height / (sheet.height || 1));
	const scale = Math.min(Math.max(whole, READABLE), LARGEST_START);
	return {
		scale,
		x: (frame.width - sheet.width * scale) / 2,
		y: Math.max(0, (frame.height - sheet.height * scale) / 2),
	};
}

export function panned(place: Place, by: { readonly x: number; readonly y: number }): Place {
	return { ...place, x: place.x + by.x, y: place.y + by.y };
}

/** Scales, and keeps the point of the drawing under `about` (px in the frame) where it is. */
export function scaledAbout(
	place: Place,
	by: number,
	about: { readonly x: number; readonly y: number },
): Place {
	const scale = Math.min(MOST, Math.max(LEAST, place.scale * by));
	const ratio = scale / place.scale;
	return { scale, x: about.x - (about.x - place.x) * ratio, y: about.y - (about.y - place.y) * ratio };
}
