/**
 * p = an elimination order of small approximate degree for the graph of A.
 *
 * P. R. Amestoy, T. A. Davis, I. S. Duff, "An approximate minimum degree ordering algorithm",
 * SIAM J. Matrix Anal. Appl. 17 (1996) 886-905. Section numbers below are of that paper.
 *
 * Quotient graph: a variable i keeps A_i (variables) and E_i (elements, the cliques left by pivots);
 * an element e keeps L_e (its variables). All lists live in one array, elements first in a variable's list.
 * Written as one function: every step shares the same dozen arrays. About O(|A| n) at worst, near linear on networks.
 * We differ in the final order: variables are sorted behind the pivot that took them, and the caller postorders
 * the elimination tree, so no assembly tree is kept here.
 */

const DEAD = 0;

/**
 * Approximate minimum degree order of a graph.
 *
 * @param n number of nodes
 * @param ptr, idx adjacency, symmetric, no loops, no repeats
 * @param denseFactor nodes of degree over max(16, denseFactor sqrt(n)) are ordered last, smallest degree first
 * @returns perm, perm[k] is the node to eliminate k-th
 */
export function minimumDegree(n: number, ptr: Int32Array, idx: Int32Array, denseFactor = 10): Int32Array {
	const perm = new Int32Array(n);
	const denseLimit = Math.min(n, Math.max(16, denseFactor * Math.sqrt(n)));
	let list = new Int32Array(Math.floor(ptr[n] * 1.2) + 2 * n + 1);
	list.set(idx.subarray(0, ptr[n]));
	let free = ptr[n];

	const start = ptr.slice(0, n); // where the list of a node begins
	const len = new Int32Array(n); // |E_i| + |A_i|, or |L_e|
	const elen = new Int32Array(n); // |E_i|; -1 for an element
	const weight = new Int32Array(n); // variables a supervariable stands for; 0 = absorbed; < 0 while in L_k
	const degree = new Int32Array(n); // bound on the external degree; for an element |L_e|
	const mark = new Int32Array(n).fill(1); // DEAD, or stamp + |L_e \ L_k|
	const into = new Int32Array(n).fill(-1); // who took this node
	const pivotRank = new Int32Array(n).fill(-1);
	const head = new Int32Array(n + 1).fill(-1); // degree lists
	const bucket = new Int32Array(n).fill(-1); // hash lists
	const next = new Int32Array(n).fill(-1);
	const prev = new Int32Array(n).fill(-1);
	const hashOf = new Int32Array(n);

	let eliminated = 0;
	let pivots = 0;
	const denseNodes: number[] = [];
	for (let i = 0; i < n; i++) {
		const d = ptr[i + 1] - ptr[i];
		len[i] = d;
		degree[i] = d;
		weight[i] = 1;
		if (d > denseLimit) {
			denseNodes.push(i);
			weight[i] = 0;
			mark[i] = DEAD;
			eliminated++;
		} else if (d === 0) {
			elen[i] = -1;
			mark[i] = DEAD;
			pivotRank[i] = pivots++;
			eliminated++;
		} else {
			next[i] = head[d];
			if (head[d] !== -1) prev[head[d]] = i;
			head[d] = i;
		}
	}

	let stamp = 2;
	let largest = 0; // largest |L_e| so far
	let least = 0;
	while (eliminated < n) {
		// 1. pivot k: a variable of least approximate degree
		while (head[least] === -1) least++;
		const k = head[least];
		head[least] = next[k];
		if (next[k] !== -1) prev[next[k]] = -1;
		eliminated += weight[k];

		// 2. make room, then L_k = (A_k u L_e for e in E_k) \ k (eq. 3.1); the elements of E_k are absorbed
		const elenK = elen[k];
		if (elenK > 0 && free + degree[k] + 1 > list.length) {
			free = compact(n, list, start, len, free);
			if (free + degree[k] + 1 > list.length) {
				const bigger = new Int32Array(2 * (free + degree[k] + 1));
				bigger.set(list.subarray(0, free));
				list = bigger;
			}
		}
		weight[k] = -weight[k];
		let sizeK = 0;
		let from = start[k];
		const beginK = elenK === 0 ? from : free;
		let endK = beginK;
		for (let s = 0; s <= elenK; s++) {
			let count: number;
			let q: number;
			let e = -1;
			if (s < elenK) {
				e = list[from++];
				q = start[e];
				count = len[e];
			} else {
				q = from;
				count = len[k] - elenK;
			}
			for (; count > 0; count--) {
				const i = list[q++];
				const w = weight[i];
				if (w <= 0) continue; // absorbed, or already in L_k
				sizeK += w;
				weight[i] = -w;
				list[endK++] = i;
				const after = next[i]; // out of its degree list
				const before = prev[i];
				if (after !== -1) prev[after] = before;
				if (before !== -1) next[before] = after;
				else head[degree[i]] = after;
			}
			if (e !== -1) {
				into[e] = k;
				mark[e] = DEAD;
				len[e] = 0;
			}
		}
		if (elenK !== 0) free = endK;
		degree[k] = sizeK;
		start[k] = beginK;
		len[k] = endK - beginK;
		elen[k] = -1;
		pivotRank[k] = pivots++;

		// 3. mark[e] - stamp = |L_e \ L_k| for every element e that touches L_k (algorithm 2)
		if (stamp > 0x3fffffff - n) {
			for (let i = 0; i < n; i++) if (mark[i] !== DEAD) mark[i] = 1;
			stamp = 2;
		}
		for (let q = beginK; q < endK; q++) {
			const i = list[q];
			const w = -weight[i];
			const limit = start[i] + elen[i];
			for (let p = start[i]; p < limit; p++) {
				const e = list[p];
				const m = mark[e];
				if (m >= stamp) mark[e] = m - w;
				else if (m !== DEAD) mark[e] = degree[e] + stamp - w;
			}
		}

		// 4. bound the degree of every i in L_k (eq. 4.1), dropping what is dead from its lists
		for (let q = beginK; q < endK; q++) {
			const i = list[q];
			const begin = start[i];
			const endE = begin + elen[i];
			const endA = begin + len[i];
			let top = begin;
			let d = 0;
			let hash = 0;
			for (let p = begin; p < endE; p++) {
				const e = list[p];
				const m = mark[e];
				if (m === DEAD) continue;
				const outside = m - stamp;
				if (outside > 0) {
					d += outside;
					list[top++] = e;
					hash += e;
				} else {
					into[e] = k; // L_e is inside L_k: aggressive absorption
					mark[e] = DEAD;
					len[e] = 0;
				}
			}
			const elements = top - begin;
			const firstVariable = top;
			for (let p = endE; p < endA; p++) {
				const j = list[p];
				const w = weight[j];
				if (w > 0) {
					d += w;
					list[top++] = j;
					hash += j;
				}
			}
			if (d === 0) {
				// nothing but k: eliminate i with it (mass elimination)
				const w = -weight[i];
				into[i] = k;
				sizeK -= w;
				eliminated += w;
				weight[i] = 0;
				elen[i] = -1;
				len[i] = 0;
				mark[i] = DEAD;
				continue;
			}
			if (d < degree[i]) degree[i] = d;
			// k goes first; what stood there moves behind its own kind
			list[top] = list[firstVariable];
			list[firstVariable] = list[begin];
			list[begin] = k;
			elen[i] = elements + 1;
			len[i] = top - begin + 1;
			hash = (hash >>> 0) % n;
			next[i] = bucket[hash];
			bucket[hash] = i;
			hashOf[i] = hash;
		}
		degree[k] = sizeK;
		if (sizeK > largest) largest = sizeK;
		stamp += largest + 1;

		// 5. merge variables of L_k that have become indistinguishable (section 2.3)
		for (let q = beginK; q < endK; q++) {
			if (weight[list[q]] >= 0) continue;
			const hash = hashOf[list[q]];
			let i = bucket[hash];
			bucket[hash] = -1;
			while (i !== -1 && next[i] !== -1) {
				const length = len[i];
				const eln = elen[i];
				for (let p = start[i] + 1; p < start[i] + length; p++) mark[list[p]] = stamp;
				let last = i;
				let j = next[i];
				while (j !== -1) {
					let same = len[j] === length && elen[j] === eln;
					for (let p = start[j] + 1; same && p < start[j] + length; p++) {
						if (mark[list[p]] !== stamp) same = false;
					}
					if (same) {
						into[j] = i;
						weight[i] += weight[j]; // both negative here
						weight[j] = 0;
						elen[j] = -1;
						len[j] = 0;
						mark[j] = DEAD;
						j = next[j];
						next[last] = j;
					} else {
						last = j;
						j = next[j];
					}
				}
				i = next[i];
				stamp++;
			}
		}

		// 6. put the remaining variables of L_k back in the degree lists
		let top = beginK;
		const left = n - eliminated;
		for (let q = beginK; q < endK; q++) {
			const i = list[q];
			const w = -weight[i];
			if (w <= 0) continue;
			weight[i] = w;
			const d = Math.min(degree[i] + sizeK - w, left - w);
			next[i] = head[d];
			prev[i] = -1;
			if (head[d] !== -1) prev[head[d]] = i;
			head[d] = i;
			if (d < least) least = d;
			degree[i] = d;
			list[top++] = i;
		}
		weight[k] = 0; // k is an element now; lists that still name it as a variable skip it
		len[k] = top - beginK;
		if (elenK !== 0) free = top;
		if (len[k] === 0) mark[k] = DEAD;
		else mark[k] = 1;
	}

	// order: by rank of the pivot that took each variable, dense nodes last
	const size = new Int32Array(pivots + 1);
	for (let i = 0; i < n; i++) {
		if (pivotRank[i] >= 0) {
			size[pivotRank[i] + 1]++;
			continue;
		}
		if (into[i] === -1) continue; // dense
		let r = i;
		while (pivotRank[r] < 0) r = into[r];
		const rank = pivotRank[r];
		size[rank + 1]++;
		for (let j = i; j !== r; ) {
			const up = into[j]; // shorten the chain
			into[j] = r;
			j = up;
		}
	}
	for (let r = 0; r < pivots; r++) size[r + 1] += size[r];
	for (let i = 0; i < n; i++) {
		const rank = pivotRank[i] >= 0 ? pivotRank[i] : into[i] === -1 ? -1 : pivotRank[into[i]];
		if (rank >= 0) perm[size[rank]++] = i;
	}
	denseNodes.sort((a, b) => len[a] - len[b] || a - b);
	for (let q = 0; q < denseNodes.length; q++) perm[n - denseNodes.length + q] = denseNodes[q];
	return perm;
}

/** Closes the gaps between the live lists; returns the first free place. O(|list|). */
function compact(n: number, list: Int32Array, start: Int32Array, len: Int32Array, free: number): number {
	// the first entry of each live list is swapped for a flag naming its owner
	for (let i = 0; i < n; i++) {
		if (len[i] > 0) {
			const p = start[i];
			start[i] = list[p];
			list[p] = -i - 1;
		}
	}
	let top = 0;
	for (let p = 0; p < free; ) {
		const flag = list[p++];
		if (flag >= 0) continue;
		const i = -flag - 1;
		list[top] = start[i];
		start[i] = top++;
		for (let s = 1; s < len[i]; s++) list[top++] = list[p++];
	}
	return top;
}
