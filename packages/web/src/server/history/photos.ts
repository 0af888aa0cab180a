/** The photos of a history, kept on the tablet within a bound, so that they show without a network. */
import { readPhoto } from "../api.js";
import { answer, database, finished, PHOTO_SIZES, PHOTOS } from "../kept/database.js";
import type { Entry } from "../types.js";
import { beyond, PHOTO_BYTES, type PhotoSize } from "./photo-bound.js";

/** A photo from this tablet, else from the server. @throws ServerFault */
export async function photoOf(job: string, photo: string, stored: string): Promise<Blob> {
	const kept = await keptPhoto(job, photo);
	if (kept) return kept;
	const picture = await readPhoto(job, photo);
	await keepPhoto({ job, photo, stored, bytes: picture.size }, picture);
	return picture;
}

const fetching = new Set<string>();
/** Fetched before, and too old to be kept beside the newer ones. */
const tooOld = new Set<string>();

/** Fetches the photos of a history that are not on this tablet, the newest first, as far as the bound goes. */
export async function keepPhotos(job: string, entries: readonly Entry[]): Promise<void> {
	if (fetching.has(job)) return;
	fetching.add(job);
	try {
		const there = new Set((await sizes()).filter((one) => one.job === job).map(({ photo }) => photo));
		for (const { kind, body, stored } of entries.toReversed()) {
			if (kind !== "photo") continue;
			const { photo } = body as { photo: string };
			if (there.has(photo)) continue;
			if (tooOld.has(photo)) return;
			const picture = await readPhoto(job, photo);
			if (await keepPhoto({ job, photo, stored, bytes: picture.size }, picture)) there.add(photo);
			else tooOld.add(photo);
		}
	} catch {
		// The network is away, or the tablet full: tried again when the history is next asked for.
	} finally {
		fetching.delete(job);
	}
}

async function keptPhoto(job: string, photo: string): Promise<Blob | undefined> {
	try {
		const transaction = (await database()).transaction(PHOTOS, "readonly");
		return (await answer(transaction.objectStore(PHOTOS).get([job, photo]))) as Blob | undefined;
	} catch {
		return undefined;
	}
}

async function sizes(): Promise<PhotoSize[]> {
	const transaction = (await database()).transaction(PHOTO_SIZES, "readonly");
	return answer(transaction.objectStore(PHOTO_SIZES).getAll()) as Promise<PhotoSize[]>;
}

/** Lets the oldest go where there are too many. Returns whether this one is kept. */
async function keepPhoto(size: PhotoSize, picture: Blob): Promise<boolean> {
	try {
		const transaction = (await database()).transaction([PHOTOS, PHOTO_SIZES], "readwrite");
		const done = finished(transaction);
		const [photos, all] = [transaction.objectStore(PHOTOS), transaction.objectStore(PHOTO_SIZES)];
		photos.put(picture, [size.job, size.photo]);
		all.put(size);
		const out = beyond((await answer(all.getAll())) as PhotoSize[], PHOTO_BYTES);
		for (const { job, photo } of out) {
			photos.delete([job, photo]);
			all.delete([job, photo]);
		}
		await done;
		return !out.some(({ job, photo }) => job === size.job && photo === size.photo);
	} catch {
		return false;
	}
}
