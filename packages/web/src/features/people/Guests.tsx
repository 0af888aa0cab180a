/** Links by which a guest, such as the customer, looks at this one job until a day: made, listed, ended. */
import { Button, TextInput } from "@mantine/core";
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { addGuest, endGuest, type GuestLink, readGuests } from "../../server/guests.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { CopyLink } from "./CopyLink.js";
import { dayAfter, endOfDay } from "./guest-days.js";
import { Told } from "./Told.js";

/** A link lasts two weeks unless said otherwise, and no longer than the server lets it. */
const USUAL_DAYS = 14;
const MOST_DAYS = 89;

export function Guests() {
	const { id: job } = useCar().job;
	const key = ["guests", job];
	const client = useQueryClient();
	const guests = useQuery({ queryKey: key, queryFn: () => readGuests(job) });
	const onSettled = () => client.invalidateQueries({ queryKey: key });
	const making = useMutation({
		mutationFn: (given: { name: string; ends: string }) => addGuest(job, given),
		networkMode: "always",
		onSettled,
	});
	const ending = useMutation({
		mutationFn: (link: string) => endGuest(job, link),
		networkMode: "always",
		onSettled,
	});
	if (guests.error)
		return (
			<FaultNotice title="The links cannot be fetched" error={guests.error} again={() => guests.refetch()} />
		);
	const now = new Date().toISOString();
	const all = guests.data ?? [];
	const open = all.filter(({ ends }) => ends > now);
	const made = making.data && open.some(({ id }) => id === making.data.id) ? making.data : undefined;
	return (
		<div className="stack">
			<p className="soft">
				Whoever has the link looks at this job and its history until the link ends, and can change nothing.
			</p>
			<NewLink busy={making.isPending} onMake={making.mutate} />
			<Told error={making.error ?? ending.error} />
			{made && (
				<CopyLink
					name={made.name}
					address={
						window.location.origin +
						window.location.pathname +
						formatRoute({ job, query: new URLSearchParams({ guest: made.token }) })
					}
				/>
			)}
			<section className="stack" aria-label="Links of this job">
				<h2>Links of this job</h2>
				{all.length === 0 && <p className="soft">None was made yet.</p>}
				<ul className="row-list">
					{open.map((link) => (
						<li key={link.id} className="waiting">
							<LinkWords link={link} ended={false} />
							<Button
								variant="default"
								aria-label={`End the link for ${link.name}`}
								onClick={() => ending.mutate(link.id)}
							>
								End it now
							</Button>
						</li>
					))}
					{all
						.filter(({ ends }) => ends <= now)
						.map((link) => (
							<li key={link.id} className="waiting">
								<LinkWords link={link} ended />
							</li>
						))}
				</ul>
			</section>
		</div>
	);
}

const LinkWords = ({ link: { name, madeBy, ends }, ended }: { link: GuestLink; ended: boolean }) => (
	<span>
		<strong>{name}</strong> {ended ? "ended" : "looks until"}{" "}
		{new Date(ends).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" })}
		<span className="soft"> made by {madeBy}</span>
	</span>
);

interface NewLinkProps {
	readonly busy: boolean;
	readonly onMake: (given: { name: string; ends: string }) => void;
}

function NewLink({ busy, onMake }: NewLinkProps) {
	const [name, setName] = useState("");
	const [day, setDay] = useState(() => dayAfter(new Date(), USUAL_DAYS));
	const ends = endOfDay(day);
	return (
		<form
			className="guest-form"
			onSubmit={(event) => {
				event.preventDefault();
				if (ends === undefined || name.trim() === "") return;
				onMake({ name: name.trim(), ends });
				setName("");
			}}
		>
			<TextInput
				label="Whom is it for?"
				value={name}
				maxLength={60}
				onChange={(event) => setName(event.currentTarget.value)}
			/>
			<TextInput
				type="date"
				label="Last day"
				value={day}
				min={dayAfter(new Date(), 0)}
				max={dayAfter(new Date(), MOST_DAYS)}
				onChange={(event) => setDay(event.currentTarget.value)}
			/>
			<Button type="submit" disabled={busy || ends === undefined || name.trim() === ""}>
				Make a link
			</Button>
		</form>
	);
}
