/** A list beside what was chosen from it; on a phone one after the other, with a way back. */
import { Button, UnstyledButton } from "@mantine/core";
import type { ReactNode } from "react";

export interface ListRow {
	readonly id: string;
	readonly title: string;
	readonly text: string;
	/** Short text at the row's end, and the same in words. */
	readonly end: string;
	readonly endLabel: string;
	/** Colours the row's edge. */
	readonly tone?: string;
}

interface ListAndDetailProps {
	readonly label: string;
	readonly rows: readonly ListRow[];
	/** Id of the row whose detail is shown; empty for none. */
	readonly open: string;
	readonly onOpen: (id: string) => void;
	readonly empty: string;
	readonly children: ReactNode;
}

export function ListAndDetail({ label, rows, open, onOpen, empty, children }: ListAndDetailProps) {
	return (
		<div className="list-detail" data-open={open !== "" || undefined}>
			<nav className="list" aria-label={label}>
				{rows.length === 0 && <p>{empty}</p>}
				<ul className="row-list">
					{rows.map(({ id, title, text, end, endLabel, tone }) => (
						<li key={id}>
							<UnstyledButton
								className="row"
								data-tone={tone}
								aria-current={id === open ? "true" : undefined}
								onClick={() => onOpen(id)}
							>
								<span className="row-main">
									<strong className="cap">{title}</strong>
									<span className="soft">{text}</span>
								</span>
								<span className="row-end" title={endLabel}>
									{end}
								</span>
							</UnstyledButton>
						</li>
					))}
				</ul>
			</nav>
			<div className="detail">
				{open === "" ? (
					<p className="detail-hint">Choose one from the list.</p>
				) : (
					<>
						<Button className="detail-back" variant="default" onClick={() => onOpen("")}>
							Back to the list
						</Button>
						{children}
					</>
				)}
			</div>
		</div>
	);
}
