/** Live updates, as server-sent events (WHATWG HTML, section 9.2). */
import { z } from "zod";
import { type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

/** So that a sign-out or the end of a link also ends what is listened to, soon after: the tablet asks again. */
const LONGEST_MS = 10 * 60_000;

export const liveRoutes: Routes =
	({ live }) =>
	async (instance) => {
		typed(instance).get(
			"/live",
			{
				sse: "only",
				config: { right: "look" },
				schema: {
					tags: ["history"],
					summary: "Says at once what was added to a job's history",
					description:
						"Server-sent events named `entry`, each with `job` and `place` of the newest. " +
						"The stream ends after some minutes; open it again.",
					response: { 200: z.string().describe("text/event-stream"), ...problemResponses },
				},
			},
			async ({ who }, reply) => {
				reply.sse.keepAlive();
				await reply.sse.send({ event: "open", data: {} });
				const stop = live.listen({
					heard(news) {
						if (who.role === "guest" && who.job !== news.job) return;
						if (reply.sse.isConnected) reply.sse.send({ event: "entry", data: news }).catch(() => {});
					},
					ended: () => reply.sse.close(),
				});
				const end = setTimeout(() => reply.sse.close(), LONGEST_MS).unref();
				reply.sse.onClose(() => {
					stop();
					clearTimeout(end);
				});
			},
		);
	};
