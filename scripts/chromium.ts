/**
 * A browser for the tests and the pictures: the one that comes with the packages (Linux on x64, also as root
 * and without any system library of its own), or the one LOOMWRIGHT_CHROMIUM names.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { type Browser, chromium } from "playwright-core";

const root = resolve(import.meta.dirname, "..");
const unpackedParent = join(root, "node_modules/.cache/chromium");

/** The bundled fonts first, then the machine's own for the signs those lack. */
const fontConfig = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
	<dir>${folder}/fonts</dir>
	<dir>/usr/share/fonts</dir>
	<cachedir>${folder}/fonts-cache</cachedir>
	<alias binding="strong"><family>sans-serif</family><prefer><family>Open Sans</family></prefer></alias>
	<alias binding="strong"><family>system-ui</family><prefer><family>Open Sans</family></prefer></alias>
</fontconfig>
`;

/**
 * The folder with the unpacked browser; made once per version of the package, safe when two ask at once.
 *
 * @throws where the package's browser does not run, saying what to set instead
 */
function unpacked(): string {
	if (process.platform !== "linux" || process.arch !== "x64")
		throw new Error(
			`The browser that comes with the packages is for Linux on x64, this is ${process.platform} on ${process.arch}. ` +
				"Set LOOMWRIGHT_CHROMIUM to the path of a Chromium on this machine.",
		);
	const manifest = join(root, "node_modules/@sparticuz/chromium/package.json");
	const { version } = JSON.parse(readFileSync(manifest, "utf8")) as { version: string };
	const folder = join(unpackedParent, version);
	if (existsSync(folder)) return folder;
	mkdirSync(unpackedParent, { recursive: true });
	const half = mkdtempSync(join(unpackedParent, "unpacking-"));
	execFileSync(process.execPath, [join(import.meta.dirname, "unpack-chromium.mjs")], {
		cwd: root,
		env: { ...process.env, TMPDIR: half, AWS_EXECUTION_ENV: "nodejs20.x" },
		stdio: ["ignore", "ignore", "inherit"],
	});
	writeFileSync(join(half, "fonts/fonts.conf"), fontConfig(folder));
	try {
		renameSync(half, folder);
	} catch (error) {
		rmSync(half, { recursive: true, force: true });
		if (!existsSync(folder)) throw error;
	}
	return folder;
}

/** Flags any container needs: no sandbox as root, no /dev/shm, the same picture of text on every machine. */
const ARGS = ["--no-sandbox", "--disable-dev-shm-usage", "--font-render-hinting=none", "--disable-gpu"];

/**
 * Starts the browser, headless. The caller closes it.
 *
 * @throws when it does not start, with the path that was tried
 */
export async function launchChromium(): Promise<Browser> {
	const own = process.env.LOOMWRIGHT_CHROMIUM;
	if (own) return chromium.launch({ executablePath: own, args: ARGS });
	const folder = unpacked();
	const libraries = [join(folder, "al2023/lib"), folder, process.env.LD_LIBRARY_PATH].filter(Boolean);
	return chromium.launch({
		executablePath: join(folder, "chromium"),
		args: ARGS,
		env: {
			...(process.env as Record<string, string>),
			LD_LIBRARY_PATH: libraries.join(":"),
			FONTCONFIG_PATH: join(folder, "fonts"),
			HOME: process.env.HOME ?? folder,
		},
	});
}
