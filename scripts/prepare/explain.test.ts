import { expect, test } from "vitest";
import { installFailure, oldNode } from "./explain.mjs";

test.each([
	["npm error code ENOTFOUND\nnpm error network request failed", /could not be reached/],
	["npm error code ECONNREFUSED", /could not be reached/],
	["prebuild-install warn install ECONNREFUSED\ngyp ERR! not found: make", /C\+\+ compiler/],
	["make: *** [Makefile] Error 127", /build-essential/],
	["npm error code EUSAGE\nnpm error `npm ci` can only install packages when", /npm install/],
	["npm error code ENOSPC", /disk is full/],
	["npm error code EACCES", /cannot be written/],
	["npm error code EINTEGRITY", /npm cache clean/],
	["spawn npm ENOENT", /npm was not found/],
	["something new", /words are above/],
])("%j is explained", (output, advice) => {
	expect(installFailure(output)).toMatch(advice);
});

test.each(["18.20.4", "20.18.3"])("Node %s is too old", (version) => {
	expect(oldNode(version)).toMatch(new RegExp(`Node ${version} is too old. Install Node 20.19 or newer`));
});

test.each(["20.19.0", "20.20.2", "22.0.0", "24.1.0"])("Node %s will do", (version) => {
	expect(oldNode(version)).toBeUndefined();
});
