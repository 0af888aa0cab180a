/*
 * Times KLU (T. A. Davis, E. Palamadai Natarajan, "Algorithm 907: KLU, a direct sparse solver for circuit simulation
 * problems", ACM Trans. Math. Softw. 37 (2010) 36:1-36:17) on one matrix.
 *
 * usage: klu_bench MATRIX SECONDS
 * MATRIX, little-endian binary: int32 n, int32 nnz, int32 colPtr[n+1], int32 rowIdx[nnz], double values[nnz],
 * double b[n].
 * Prints one line of JSON: medians in seconds with default settings and with row scaling and block form switched off
 * (the "lean" figures), entries of L + U, and the scaled residual |Ax-b| / (|A||x|+|b|) in the infinity norm.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <suitesparse/klu.h>

enum { MAX_RUNS = 2000, MIN_RUNS = 7 };

static double now(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec + 1e-9 * t.tv_nsec;
}

static int ascending(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

static double median(double *runs, int count)
{
	qsort(runs, count, sizeof(double), ascending);
	return count % 2 ? runs[count / 2] : 0.5 * (runs[count / 2 - 1] + runs[count / 2]);
}

static void need(int ok, const char *what)
{
	if (!ok) {
		fprintf(stderr, "klu_bench: %s\n", what);
		exit(1);
	}
}

typedef struct {
	double analyze, factor, refactor, solve, together;
} timings;

static double runs[5][MAX_RUNS];

static timings measure(int n, int *ap, int *ai, double *ax, const double *b, double *x, klu_common *common,
	double seconds, int *entries)
{
	int count = 0;
	double started = now();
	while (count < MIN_RUNS || (count < MAX_RUNS && now() - started < seconds)) {
		double t0 = now();
		klu_symbolic *symbolic = klu_analyze(n, ap, ai, common);
		double t1 = now();
		need(symbolic != NULL, "klu_analyze failed");
		klu_numeric *numeric = klu_factor(ap, ai, ax, symbolic, common);
		double t2 = now();
		need(numeric != NULL, "klu_factor failed");
		memcpy(x, b, n * sizeof(double));
		double t3 = now();
		need(klu_solve(symbolic, numeric, n, 1, x, common), "klu_solve failed");
		double t4 = now();
		need(klu_refactor(ap, ai, ax, symbolic, numeric, common), "klu_refactor failed");
		double t5 = now();
		runs[0][count] = t1 - t0;
		runs[1][count] = t2 - t1;
		runs[2][count] = t5 - t4;
		runs[3][count] = t4 - t3;
		runs[4][count] = (t2 - t1) + (t4 - t3);
		count++;
		*entries = numeric->lnz + numeric->unz;
		klu_free_numeric(&numeric, common);
		klu_free_symbolic(&symbolic, common);
	}
	timings t = {median(runs[0], count), median(runs[1], count), median(runs[2], count), median(runs[3], count),
		median(runs[4], count)};
	return t;
}

static double residual(int n, const int *ap, const int *ai, const double *ax, const double *b, const double *x)
{
	double *r = calloc(n, sizeof(double)), *row = calloc(n, sizeof(double));
	double rmax = 0, amax = 0, xmax = 0, bmax = 0;
	for (int i = 0; i < n; i++) r[i] = b[i];
	for (int j = 0; j < n; j++)
		for (int p = ap[j]; p < ap[j + 1]; p++) {
			r[ai[p]] -= ax[p] * x[j];
			row[ai[p]] += fabs(ax[p]);
		}
	for (int i = 0; i < n; i++) {
		rmax = fmax(rmax, fabs(r[i]));
		amax = fmax(amax, row[i]);
		xmax = fmax(xmax, fabs(x[i]));
		bmax = fmax(bmax, fabs(b[i]));
	}
	free(r);
	free(row);
	return rmax / (amax * xmax + bmax);
}

int main(int argc, char **argv)
{
	need(argc == 3, "usage: klu_bench MATRIX SECONDS");
	FILE *file = fopen(argv[1], "rb");
	need(file != NULL, "cannot open the matrix file");
	int head[2];
	need(fread(head, sizeof(int), 2, file) == 2, "matrix file too short");
	int n = head[0], nnz = head[1];
	int *ap = malloc((n + 1) * sizeof(int)), *ai = malloc(nnz * sizeof(int));
	double *ax = malloc(nnz * sizeof(double)), *b = malloc(n * sizeof(double)), *x = malloc(n * sizeof(double));
	need(ap && ai && ax && b && x, "out of memory");
	need(fread(ap, sizeof(int), n + 1, file) == (size_t)n + 1, "matrix file too short");
	need(fread(ai, sizeof(int), nnz, file) == (size_t)nnz, "matrix file too short");
	need(fread(ax, sizeof(double), nnz, file) == (size_t)nnz, "matrix file too short");
	need(fread(b, sizeof(double), n, file) == (size_t)n, "matrix file too short");
	fclose(file);

	double seconds = atof(argv[2]);
	int entries = 0, lean_entries = 0;
	klu_common common, lean;
	klu_defaults(&common);
	klu_defaults(&lean);
	lean.scale = -1;
	lean.btf = 0;
	timings l = measure(n, ap, ai, ax, b, x, &lean, seconds / 2, &lean_entries);
	timings d = measure(n, ap, ai, ax, b, x, &common, seconds / 2, &entries);
	printf("{\"n\":%d,\"nnz\":%d,\"entries\":%d,\"leanEntries\":%d,\"analyze\":%.9g,\"factor\":%.9g,\"refactor\":%.9g,"
		"\"solve\":%.9g,\"factorAndSolve\":%.9g,\"leanAnalyze\":%.9g,\"leanFactor\":%.9g,\"leanRefactor\":%.9g,"
		"\"leanSolve\":%.9g,\"leanFactorAndSolve\":%.9g,\"residual\":%.3g}\n",
		n, nnz, entries, lean_entries, d.analyze, d.factor, d.refactor, d.solve, d.together, l.analyze, l.factor,
		l.refactor, l.solve, l.together, residual(n, ap, ai, ax, b, x));
	return 0;
}
