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
/** Scales at which names are easy to read, and can still be read. */
const EASY = 0.95;
const READABLE = 0.7;
const LARGEST = 1.15;

/** To start with: the whole drawing or, where that could not be read, as much of its top as can be. */
export function start(frame: Size, sheet: Size): Place {
	const { scale } = fit(frame, sheet);
	const wide = frame.width / (sheet.width || 1);
	return middle(frame, sheet, Math.max(scale, Math.min(EASY, Math.max(READABLE, wide))));
}

/** The whole drawing in the middle. */
export function fit(frame: Size, sheet: Size): Place {
	const whole = Math.min(frame.width / (sheet.width || 1), frame.height / (sheet.height || 1));
	return middle(frame, sheet, Math.min(whole, LARGEST));
}

function middle(frame: Size, sheet: Size, scale: number): Place {
	const y = Math.max(0, (frame.height - sheet.height * scale) / 2);
	return { scale, x: (frame.width - sheet.width * scale) / 2, y };
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
