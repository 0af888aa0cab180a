/** While the sheet is computed: how long it has been, and how long it took on this tablet the last time. */
import { useInterval, useLocalStorage } from "@mantine/hooks";
import { useEffect, useRef, useState } from "react";

const TICK_MS = 250;

export function Computing() {
	const [last, setLast] = useLocalStorage({
		key: "loomwright-proving-seconds",
		defaultValue: 0,
		getInitialValueInEffect: false,
	});
	const began = useRef(performance.now());
	const [seconds, setSeconds] = useState(0);
	useInterval(() => setSeconds((performance.now() - began.current) / 1000), TICK_MS, { autoInvoke: true });
	// Taken down when the sheet is there and this goes.
	useEffect(() => {
		const start = performance.now();
		return () => {
			const took = (performance.now() - start) / 1000;
			if (took > 1) setLast(took);
		};
	}, [setLast]);
	const share = last > 0 ? Math.min(0.98, seconds / last) : undefined;
	return (
		<section className="card stack" role="status">
			<h2>Working out the fewest readings that show any single mistake</h2>
			<p>
				{Math.floor(seconds)} s so far
				{last > 0 ? `; the last time it took ${Math.ceil(last)} s on this tablet` : "; it takes some seconds"}
				. After that it is kept here.
			</p>
			{share !== undefined && (
				<span className="share-bar" aria-hidden="true">
					<span style={{ width: `${100 * share}%` }} />
				</span>
			)}
		</section>
	);
}
