/** A link that is shown this once: to be copied, or read off. */
import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";

/** Other devices cannot reach the page under these names. */
const OWN_MACHINE = /^(127\.|localhost$|\[?::1)/;

export function CopyLink({ name, address }: { name: string; address: string }) {
	const field = useRef<HTMLInputElement>(null);
	const [copied, setCopied] = useState<boolean>();
	const copy = async () => {
		// Over plain http browsers keep the clipboard from a page; then the link is marked for copying by hand.
		field.current?.select();
		setCopied(
			await navigator.clipboard?.writeText(address).then(
				() => true,
				() => false,
			),
		);
	};
	return (
		<section className="notice stack" aria-label={`Link for ${name}`}>
			<p>
				<strong>Link for {name}.</strong> It is shown this once; the shop keeps no copy of it.
			</p>
			<TextInput
				ref={field}
				readOnly
				label="Link"
				value={address}
				onFocus={(event) => event.currentTarget.select()}
			/>
			<div className="step-acts">
				<Button onClick={() => void copy()}>Copy the link</Button>
			</div>
			<p role="status">
				{copied === true && "Copied."}
				{copied === false && "It could not be copied: it is marked now, copy it by the tablet's own menu."}
			</p>
			{OWN_MACHINE.test(window.location.hostname) && (
				<p>
					It names this machine itself, so others cannot open it. Open this page under the address that
					tablets use, and make the link there.
				</p>
			)}
		</section>
	);
}
