/** Photos of a job: taken in whole or not at all, told by their content, named by it. */
import multipart from "@fastify/multipart";
import { z } from "zod";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { photoType } from "../photo-type.js";
import { Problem, problemResponses } from "../problem.js";

const MEBIBYTE = 1024 * 1024;
/** Largest photo taken, in bytes. */
const PHOTO_LIMIT = 12 * MEBIBYTE;

const tags = ["history"];
const id = z.string().regex(/^[0-9a-f]{64}$/, "SHA-256, hexadecimal");

/** What the form's reader throws by status is told as it is; without one it could make nothing of the form. */
function unreadable(error: Error): never {
	if ("statusCode" in error) throw error;
	throw new Problem(
		400,
		"the form cannot be read",
		"Send one file as multipart/form-data, its boundary named.",
	);
}

export const photoRoutes: Routes =
	({ store }) =>
	async (instance) => {
		await instance.register(multipart, {
			limits: { files: 1, fields: 0, parts: 1, fileSize: PHOTO_LIMIT, headerPairs: 20 },
		});
		const app = typed(instance);

		app.post(
			"/jobs/:job/photos",
			{
				config: { right: "write" },
				bodyLimit: PHOTO_LIMIT + MEBIBYTE,
				schema: {
					tags,
					summary: "Takes in a photo: JPEG, PNG or WebP, up to 12 MiB, as multipart/form-data",
					description:
						"Then write an entry of kind `photo` with the id. The same photo again has the same id.",
					params: jobParams,
					response: { 200: z.object({ photo: id }), ...problemResponses },
				},
			},
			async (request) => {
				const job = await jobOf(store, request.params.job);
				const part = request.isMultipart() ? await request.file().catch(unreadable) : undefined;
				if (!part) throw new Problem(415, "no photo came", "Send one file as multipart/form-data.");
				const bytes = await part.toBuffer();
				// The reader cuts at the limit, and does not say so where the cut falls between two pieces.
				if (part.file.truncated)
					throw new Problem(413, "the photo is too large", "Send a smaller one: a photo may have 12 MiB.");
				const type = photoType(bytes);
				if (!type)
					throw new Problem(
						415,
						"this is no whole JPEG, PNG or WebP picture",
						"Take the photo again, or set the camera to JPEG.",
					);
				return { photo: await store.addAttachment(job.id, type, bytes) };
			},
		);

		app.get(
			"/jobs/:job/photos/:photo",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "A photo as it came",
					params: jobParams.extend({ photo: id }),
					response: { 200: z.any().describe("image/jpeg, image/png or image/webp"), ...problemResponses },
				},
			},
			async ({ params }, reply) => {
				const job = await jobOf(store, params.job);
				const found = await store.attachment(job.id, params.photo);
				if (!found) throw new Problem(404, "there is no such photo", "Take the id from the job's history.");
				return reply
					.type(found.type)
					.header("content-disposition", "inline")
					.header("content-security-policy", "default-src 'none'; sandbox")
					.header("cache-control", "private, max-age=31536000, immutable")
					.send(Buffer.from(found.bytes));
			},
		);
	};
