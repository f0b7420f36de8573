"""Rows of all solvers into the table and the ratio lines: see run."""
import sys

rows, checks, peaks = [], [], []
for line in sys.stdin:
    fields = line.strip().split(";")
    if fields[0] == "check":
        checks.append(fields[1:])
    elif fields[0] == "peak":
        peaks.append(fields[1:])
    elif len(fields) == 6:
        rows.append([fields[0], *map(float, fields[1:])])

print("Against BallSim's solution at tolerance 1e-12, greatest difference at the end of the shot over the releases:\n")
for name, x, time in checks:
    print(f"{name:<78} {x:>8} m {time:>8} s")
print("\nSettings: tolerance, in RK4's case the step in s. SciPy is timed on every 16th release.")
print(f"\n{'':<30} | {'below':>6} | {'setting':>8} | {'error':>8} | {'in time':>8} | {'us a shot':>9}")
for name, mark, setting, error, time, micros in sorted(rows, key=lambda row: -row[1]):
    print(f"{name:<30} | {mark:6.0e} | {setting:8.1e} | {error:8.1e} | {time:8.1e} | {micros:9.1f}")
print()
for mark in sorted({row[1] for row in rows}, reverse=True):
    micros = {row[0]: row[5] for row in rows if row[1] == mark}
    bare, kept = micros["BallSim, bare"], micros["BallSim, path kept"]

    def best(ending):
        return min((each, name) for name, each in micros.items() if name.startswith("odeint") and name.endswith(ending))

    print(f"Greatest error below {mark:.0e} m, times of BallSim (bare; path kept):")
    for label, (each, name) in [("odeint's best, textbook", best("textbook")), ("odeint's best, slow", best("slow"))] + [(n, (micros[n], n)) for n in micros if n.startswith(("SciPy", "MathNet"))]:
        shown = label if label == name else f"{label} ({name.split()[1].rstrip(',')})"
        print(f"  {shown:<42} {each / bare:7.2f} {each / kept:7.2f}")
print()
for name, doubles, peak in peaks:
    print(f"Peak of one core, fused multiply-adds of {doubles} doubles from registers, {name}: {peak} GFLOP/s")
