import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { request } from "node:https";
import { join } from "node:path";
import { expect, test } from "vitest";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { SMALL_CAR } from "./server.test-helper.js";
import { start } from "./start.js";

/** A certificate of its own, made as docs/shop.md says; undefined where there is no openssl. */
function certificate(folder: string): { cert: string; key: string } | undefined {
	const [cert, key] = [join(folder, "shop.pem"), join(folder, "shop.key")];
	const kind = ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2"];
	const name = ["-subj", "/CN=shop.lan", "-addext", "subjectAltName=IP:127.0.0.1"];
	try {
		execFileSync("openssl", ["req", "-x509", ...kind, ...name, "-keyout", key, "-out", cert], {
			stdio: "ignore",
		});
		return { cert, key };
	} catch {
		return undefined;
	}
}

test("by the shop's own certificate: https, and the session's cookie goes over nothing else", async (context) => {
	const data = temporaryFolder();
	const tls = certificate(data);
	if (!tls) return context.skip("not tested: there is no openssl to make a certificate with");
	const server = await start({ port: 0, host: "127.0.0.1", data, folder: SMALL_CAR, ...tls });
	expect(server.address).toMatch(/^https:/);
	const cookie = await new Promise<string[] | undefined>((resolve, reject) => {
		const headers = { "content-type": "application/json" };
		const asked = request(
			`${server.address}/api/v1/setup`,
			{ method: "POST", headers, ca: readFileSync(tls.cert) },
			(answer) => resolve(answer.resume().headers["set-cookie"]),
		).once("error", reject);
		asked.end(JSON.stringify({ name: "Ola", pin: "270385" }));
	});
	await server.close();
	expect(cookie?.[0]).toMatch(/; HttpOnly; Secure; SameSite=Strict$/);
});
