import { createHash } from "node:crypto";
import { connect } from "node:net";
import { deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { photoType } from "../photo-type.js";
import { JOB, smallServer } from "../server.test-helper.js";

/** One grey pixel, by the PNG specification (ISO/IEC 15948); check sums of the chunks by zlib's crc32. */
const PNG = Buffer.from(
	"89504e470d0a1a0a0000000d4948445200000001000000010800000000" +
		"3a7e9b550000000a49444154789c63f80f00010101005e1c2b0d0000000049454e44ae426082",
	"hex",
);
const JPEG = Buffer.from([0xff, 0xd8, 0xff, 0xe0, ...new Uint8Array(40), 0xff, 0xd9]);

function form(bytes: Uint8Array, name = "photo.png", type = "image/png"): FormData {
	const data = new FormData();
	data.append("file", new Blob([new Uint8Array(bytes)], { type }), name);
	return data;
}

describe("photos", () => {
	test("come back byte for byte, named by their content, whatever name they came under", async () => {
		const { address, ask } = await smallServer();
		const sha256 = createHash("sha256").update(PNG).digest("hex");
		for (const name of ["photo.png", "../../../etc/passwd", "a\u0000b.html"]) {
			const response = await fetch(`${address}${JOB}/photos`, {
				method: "POST",
				body: form(PNG, name, "text/html"),
			});
			expect([response.status, await response.json()]).toEqual([200, { photo: sha256 }]);
		}
		const back = await fetch(`${address}${JOB}/photos/${sha256}`);
		expect(Buffer.from(await back.arrayBuffer())).toEqual(PNG);
		expect([back.headers.get("content-type"), back.headers.get("x-content-type-options")]).toEqual([
			"image/png",
			"nosniff",
		]);
		const entry = { kind: "photo", body: { photo: sha256, step: "recipe/2" }, person: "Kim" };
		expect((await ask("POST", `${JOB}/entries`, entry)).status).toBe(201);
	});

	test.each([
		["a page", Buffer.from("<html><script>alert(1)</script></html>")],
		["a drawing that could hold a script", Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'></svg>")],
		["a picture cut short", PNG.subarray(0, -4)],
		["nothing", Buffer.alloc(0)],
	])("%s is refused", async (_what, bytes) => {
		const { address } = await smallServer();
		const response = await fetch(`${address}${JOB}/photos`, { method: "POST", body: form(bytes) });
		expect([response.status, await response.json()]).toEqual([
			415,
			expect.objectContaining({ toDo: expect.stringContaining("JPEG") }),
		]);
	});

	test("too large, not as a form, and two at once", async () => {
		const { address } = await smallServer();
		const post = async (body: FormData | string, headers: Record<string, string> = {}) => {
			const response = await fetch(`${address}${JOB}/photos`, { method: "POST", body, headers });
			const { toDo } = (await response.json()) as { toDo: string };
			expect(toDo).not.toBe("");
			return response.status;
		};
		const large = Buffer.alloc(12 * 1024 * 1024 + 1000, 1);
		PNG.copy(large);
		expect(await post(form(large))).toBe(413);
		expect(await post("x", { "content-type": "application/json" })).toBe(400);
		expect(await post("x", { "content-type": "image/png" })).toBe(415);
		expect(await post("x", { "content-type": "multipart/form-data" })).toBe(400);
		expect(await post("x", { "content-type": "multipart/form-data; boundary=" })).toBe(400);
	});

	test("an upload that breaks off leaves nothing, and the server goes on", async () => {
		const { address, ask } = await smallServer();
		const { port } = new URL(address);
		await new Promise<void>((resolve) => {
			const socket = connect(Number(port), "127.0.0.1", () => {
				socket.write(
					`POST ${JOB}/photos HTTP/1.1\r\nhost: 127.0.0.1\r\ncontent-length: 100000\r\n` +
						"content-type: multipart/form-data; boundary=b\r\n\r\n--b\r\n" +
						'content-disposition: form-data; name="file"; filename="a.png"\r\n\r\n',
				);
				socket.write(PNG.subarray(0, 20), () => socket.destroy());
			});
			socket.on("close", () => resolve());
		});
		const cut = await fetch(`${address}${JOB}/photos`, {
			method: "POST",
			headers: { "content-type": "multipart/form-data; boundary=b" },
			body: '--b\r\ncontent-disposition: form-data; name="file"; filename="a.png"\r\n\r\nhalf',
		});
		expect([cut.status, ((await cut.json()) as { error: string }).error]).toEqual([
			400,
			"the upload broke off; nothing of it was kept",
		]);
		const sha256 = createHash("sha256").update(PNG.subarray(0, 20)).digest("hex");
		expect((await ask("GET", `${JOB}/photos/${sha256}`)).status).toBe(404);
	});
});

test("the type is told from the bytes", () => {
	expect(photoType(PNG)).toBe("image/png");
	expect(photoType(JPEG)).toBe("image/jpeg");
	expect(photoType(Buffer.concat([JPEG, Buffer.alloc(7)]))).toBe("image/jpeg");
	const webp = Buffer.alloc(28);
	webp.write("RIFF", 0);
	webp.writeUInt32LE(20, 4);
	webp.write("WEBPVP8 ", 8);
	expect(photoType(webp)).toBe("image/webp");
	expect(photoType(webp.subarray(0, 27))).toBeUndefined();
	expect(photoType(deflateSync("x".repeat(100)))).toBeUndefined();
});
