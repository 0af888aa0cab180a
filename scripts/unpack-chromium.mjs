/**
 * Unpacks the packaged browser with its libraries and fonts below TMPDIR. A process of its own, since the
 * package looks at TMPDIR and AWS_EXECUTION_ENV when it is loaded: without the latter it leaves out the libraries.
 */
import chromium from "@sparticuz/chromium";

await chromium.executablePath();
