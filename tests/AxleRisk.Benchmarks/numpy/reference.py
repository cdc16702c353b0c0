"""The linear ride in time with numpy and scipy: road by FFT, ride by lfilter, cycles by a plain loop over turning points. Prints simulated
seconds per second of processor time, for the comparison in docs/performance.md."""
import time

import numpy as np
from scipy import signal

SECONDS, RATE, RECORDS = 64, 512, 16
MS, MU, KS, CS, KT, CT, PHI = 600, 90, 45e3, 4000, 300e3, 200, 0.5
SPEED, ROUGHNESS, CONTACT, STRESS = 50 / 3.6, 1024e-6, 0.2, 0.012
# DNV-RP-C203 class E in air, mean curve.
M1, LOG_A1, M2, LOG_A2 = 3, 12.410, 5, 15.750


def filter_coefficients():
    """From the tyre input kt z + ct z' to the force through the section."""
    a = np.array([[0, 1, 0, 0], [-KS / MS, -CS / MS, KS / MS, CS / MS], [0, 0, 0, 1],
                  [KS / MU, CS / MU, -(KS + KT) / MU, -(CS + CT) / MU]])
    b = np.array([[0], [0], [0], [1 / MU]])
    c = np.array([[-PHI * KS, -PHI * CS, PHI * KS - (1 - PHI) * KT, PHI * CS - (1 - PHI) * CT]])
    system = signal.cont2discrete((a, b, c, np.array([[1 - PHI]])), 1 / RATE, method="foh")
    numerator, denominator = signal.ss2tf(*system[:4])
    return numerator[0], denominator


def roads(rng):
    f = np.arange(SECONDS * RATE // 2 + 1) / SECONDS
    band = (f >= 0.25) & (f <= 50)
    n = f[band] / SPEED
    psd = ROUGHNESS * (n / 0.1) ** -2.0 / SPEED * np.sinc(n * CONTACT) ** 2
    tyre = KT + 2j * np.pi * f[band] * CT
    spectrum = np.zeros((RECORDS, len(f)), complex)
    normals = rng.standard_normal((2, RECORDS, band.sum()))
    spectrum[:, band] = np.sqrt(psd / SECONDS) * tyre * (normals[0] + 1j * normals[1])
    return np.fft.irfft(spectrum, axis=1) * (SECONDS * RATE / 2)


def damage(x):
    d = np.diff(x)
    turns = np.concatenate((x[:1], x[1:-1][d[:-1] * d[1:] < 0], x[-1:]))
    stack, ranges, counts = [], [], []
    for point in turns.tolist():
        stack.append(point)
        while len(stack) >= 3:
            earlier = abs(stack[-2] - stack[-3])
            if abs(stack[-1] - stack[-2]) < earlier:
                break
            ranges.append(earlier)
            if len(stack) == 3:
                counts.append(0.5)
                del stack[0]
            else:
                counts.append(1)
                del stack[-3:-1]
    ranges += [abs(a - b) for a, b in zip(stack, stack[1:])]
    counts += [0.5] * (len(stack) - 1)
    s = STRESS * np.array(ranges)
    knee = 10 ** ((LOG_A2 - LOG_A1) / (M2 - M1))
    return (np.array(counts) * np.where(s >= knee, s ** M1 / 10 ** LOG_A1, s ** M2 / 10 ** LOG_A2)).sum()


def main():
    rng = np.random.default_rng(1)
    b, a = filter_coefficients()
    warm = 8 * RATE
    parts = {"road": [], "ride": [], "cycles": []}
    mean = []
    for _ in range(5):
        t0 = time.process_time()
        u = roads(rng)
        t1 = time.process_time()
        force = signal.lfilter(b, a, np.concatenate((u[:, -warm:], u), axis=1), axis=1)[:, warm:]
        t2 = time.process_time()
        mean.append(sum(damage(x) for x in force) / (RECORDS * SECONDS))
        t3 = time.process_time()
        for name, t in zip(parts, (t1 - t0, t2 - t1, t3 - t2)):
            parts[name].append(t)
    simulated = SECONDS * RECORDS
    for name, times in parts.items():
        print(f"numpy {name:8} {simulated / min(times):12,.0f}")
    print(f"numpy whole    {simulated / min(map(sum, zip(*parts.values()))):12,.0f}   damage per second {np.mean(mean):.4e}")


main()
