/** What the app is not; stands under every screen. */
export const Caution = () => (
	<footer className="caution">
		<strong>What this is not.</strong> Numbers here are computed from the tables of this car. They do not
		replace the maker's procedures, local code, an inspection or a licensed person. Restraint (airbag) and
		high-voltage circuits are never measured or worked on with it.
	</footer>
);
