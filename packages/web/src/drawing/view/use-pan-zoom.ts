/** Moving and scaling a drawing by one finger, two fingers, wheel or buttons. */
import { type PointerEvent, type RefObject, useCallback, useEffect, useRef, useState } from "react";
import { fit, type Place, panned, type Size, scaledAbout, start } from "./place.js";

/** A touch that moved less than this many px is a tap. Wide, for gloves. */
const TAP_PX = 10;

interface Held {
	x: number;
	y: number;
}

export interface PanZoom {
	readonly place: Place;
	readonly zoom: (by: number) => void;
	readonly whole: () => void;
	readonly handlers: {
		onPointerDown(event: PointerEvent<SVGSVGElement>): void;
		onPointerMove(event: PointerEvent<SVGSVGElement>): void;
		onPointerUp(event: PointerEvent<SVGSVGElement>): void;
		onPointerCancel(event: PointerEvent<SVGSVGElement>): void;
	};
}

/** @param tapped called with the element under a tap and where on the drawing it was, in drawing units */
export function usePanZoom(
	frame: RefObject<SVGSVGElement | null>,
	sheet: Size,
	tapped: (target: Element, at: { readonly x: number; readonly y: number }) => void,
): PanZoom {
	const [place, setPlace] = useState<Place>({ x: 0, y: 0, scale: 1 });
	const held = useRef(new Map<number, Held>());
	const moved = useRef(0);
	const touched = useRef(false);

	const whole = useCallback(() => {
		const box = frame.current?.getBoundingClientRect();
		if (box) setPlace(fit(box, sheet));
		touched.current = true;
	}, [frame, sheet]);

	useEffect(() => {
		const element = frame.current;
		if (!element) return;
		const begin = () => setPlace(start(element.getBoundingClientRect(), sheet));
		touched.current = false;
		begin();
		const observer = new ResizeObserver(() => {
			if (!touched.current) begin();
		});
		observer.observe(element);
		const wheel = (event: WheelEvent) => {
			if (!event.ctrlKey && !event.metaKey && !touched.current) return;
			event.preventDefault();
			const box = element.getBoundingClientRect();
			const about = { x: event.clientX - box.left, y: event.clientY - box.top };
			touched.current = true;
			setPlace((p) => scaledAbout(p, Math.exp(-event.deltaY / 400), about));
		};
		element.addEventListener("wheel", wheel, { passive: false });
		return () => {
			observer.disconnect();
			element.removeEventListener("wheel", wheel);
		};
	}, [frame, sheet]);

	const zoom = useCallback(
		(by: number) => {
			const box = frame.current?.getBoundingClientRect();
			if (!box) return;
			touched.current = true;
			setPlace((p) => scaledAbout(p, by, { x: box.width / 2, y: box.height / 2 }));
		},
		[frame],
	);

	const handlers: PanZoom["handlers"] = {
		onPointerDown(event) {
			event.currentTarget.setPointerCapture(event.pointerId);
			if (held.current.size === 0) moved.current = 0;
			held.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
		},
		onPointerMove(event) {
			const before = held.current.get(event.pointerId);
			if (!before) return;
			const now = { x: event.clientX, y: event.clientY };
			moved.current += Math.hypot(now.x - before.x, now.y - before.y);
			if (moved.current < TAP_PX) return;
			touched.current = true;
			const box = event.currentTarget.getBoundingClientRect();
			const others = [...held.current].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
			held.current.set(event.pointerId, now);
			const other = others[0];
			if (other) {
				const by = distance(now, other) / (distance(before, other) || 1);
				const about = { x: (now.x + other.x) / 2 - box.left, y: (now.y + other.y) / 2 - box.top };
				const slide = { x: (now.x - before.x) / 2, y: (now.y - before.y) / 2 };
				setPlace((p) => panned(scaledAbout(p, by, about), slide));
			} else setPlace((p) => panned(p, { x: now.x - before.x, y: now.y - before.y }));
		},
		onPointerUp(event) {
			held.current.delete(event.pointerId);
			if (moved.current >= TAP_PX || held.current.size > 0) return;
			// The pointer is captured by the frame, so what lies under the finger is asked of the page.
			const target = document.elementFromPoint(event.clientX, event.clientY);
			if (!target) return;
			const box = event.currentTarget.getBoundingClientRect();
			const at = {
				x: (event.clientX - box.left - place.x) / place.scale,
				y: (event.clientY - box.top - place.y) / place.scale,
			};
			tapped(target, at);
		},
		onPointerCancel(event) {
			held.current.delete(event.pointerId);
		},
	};
	return { place, zoom, whole, handlers };
}

const distance = (a: Held, b: Held) => Math.hypot(a.x - b.x, a.y - b.y);
