/** The part of a drawing that moves, with its buttons. */
import { Button } from "@mantine/core";
import { type CSSProperties, type ReactNode, useMemo, useRef } from "react";
import type { PlacedSheet } from "../layout/types.js";
import type { Sheet } from "../sheet/types.js";
import { describe } from "./describe.js";
import { nearestWire } from "./nearest-wire.js";
import { SheetPicture } from "./SheetPicture.js";
import { usePanZoom } from "./use-pan-zoom.js";

/** How far beside a wire a finger may land, in px on the screen. */
const TAP_PX = 24;

interface DrawingFrameProps {
	readonly sheet: Sheet;
	readonly placed: PlacedSheet;
	readonly selected: string;
	readonly leads: ReadonlyMap<string, string>;
	readonly onWire: (wire: string) => void;
	readonly onPoint?: (name: string) => void;
	/** Further buttons beside those that move the drawing. */
	readonly children: ReactNode;
}

export function DrawingFrame({
	sheet,
	placed,
	selected,
	leads,
	onWire,
	onPoint,
	children,
}: DrawingFrameProps) {
	const frame = useRef<SVGSVGElement>(null);
	const size = useMemo(() => ({ width: placed.width, height: placed.height }), [placed]);
	const { place, zoom, whole, handlers } = usePanZoom(frame, size, (target, at) => {
		const data = (name: string) => target.closest(`[data-${name}]`)?.getAttribute(`data-${name}`) ?? "";
		const point = data("contact") || data("joint");
		if (point !== "" && onPoint) onPoint(point);
		else onWire(nearestWire(placed.wires, at, TAP_PX / place.scale));
	});
	return (
		<div>
			<div className="drawing-box" style={{ "--sheet-height": `${placed.height}px` } as CSSProperties}>
				<svg ref={frame} className="draw-frame" role="img" aria-label={describe(sheet)} {...handlers}>
					<g transform={`translate(${place.x} ${place.y}) scale(${place.scale})`}>
						<SheetPicture placed={placed} selected={selected} leads={leads} />
					</g>
				</svg>
			</div>
			<div className="drawing-tools">
				<Button variant="default" onClick={() => zoom(1.35)}>
					Closer
				</Button>
				<Button variant="default" onClick={() => zoom(1 / 1.35)}>
					Farther
				</Button>
				<Button variant="default" onClick={whole}>
					Whole
				</Button>
				{children}
			</div>
		</div>
	);
}
