// The batch kernel's method in plain C++: loops that the compiler may vectorise, no intrinsics. Prints microseconds per evaluation of the
// five-leg benchmark case (that of ../FiveLegCase.cs with another generator) and the life of the median vehicle, which shows that it is the
// same computation: DNV-RP-C203 class E, mean curve, Dirlik.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <random>
#include <vector>

constexpr int kRows = 256, kLegs = 5, kFine = 128, kEnds = 8;
constexpr double kPi = 3.14159265358979323846, kLowest = 0.25, kHighest = 50, kCentre = 3.5355339059327378, kLeastShift = 2e-6;
constexpr double kLogA1 = 12.010 + 0.4, kLogA2 = 15.350 + 0.4;

struct Grid {
    int points, phases, length;
    double step, greatest;
    std::vector<float> x, weights, values, slopes;

    double gain(int substep) const {
        double u = kPi * kLowest * kLeastShift * std::exp(substep * step / phases);
        return std::sin(u) * std::sin(u) / (u * u);
    }

    Grid(int points, int phases, double greatestShift) : points(points), phases(phases), x(points), weights(4 * points) {
        double whole = std::log(kHighest / kLowest);
        step = whole / (points - 1);
        greatest = std::log(greatestShift);
        std::vector<double> ends(points);
        endWeights(whole / (kFine - 1) / step, ends);
        for (int i = 0; i < points; i++) {
            double f = kLowest / kCentre * std::exp(step * i), w = kCentre * f * step * (1 + ends[i] + ends[points - 1 - i]);
            x[i] = f * f;
            int power[] = {2, 3, 4, 6};
            for (int k = 0; k < 4; k++) weights[k * points + i] = w * std::pow(f, power[k]);
        }
        length = ((int)((greatest - std::log(kLeastShift)) / step) + points + 16) / 16 * 16;
        values.resize(phases * length);
        slopes.resize(phases * length);
        for (int p = 0; p < phases; p++)
            for (int k = 0; k < length; k++) {
                values[p * length + k] = gain(k * phases + p);
                slopes[p * length + k] = gain(k * phases + p + 1) - gain(k * phases + p);
            }
    }

    static void endWeights(double finer, std::vector<double>& w) {
        if (finer == 1) { w[0] = -0.5; return; }
        const double zeta[kEnds] = {0, -1.0 / 12, 0, 1.0 / 120, 0, -1.0 / 252, 0, 1.0 / 240};
        double a[kEnds][kEnds + 1];
        for (int p = 0; p < kEnds; p++) {
            for (int j = 0; j < kEnds; j++) a[p][j] = std::pow(j, p);
            a[p][kEnds] = p == 0 ? -0.5 : -zeta[p] * (1 - std::pow(finer, p + 1));
        }
        for (int p = 0; p < kEnds; p++) {
            int best = p;
            for (int r = p; r < kEnds; r++) if (std::fabs(a[r][p]) > std::fabs(a[best][p])) best = r;
            std::swap(a[p], a[best]);
            for (int r = 0; r < kEnds; r++)
                if (r != p) {
                    double f = a[r][p] / a[p][p];
                    for (int c = p; c <= kEnds; c++) a[r][c] -= f * a[p][c];
                }
        }
        for (int p = 0; p < kEnds; p++) w[p] = a[p][kEnds] / a[p][p];
    }
};

struct Columns {
    double ms[kRows], mu[kRows], ks[kRows], cs[kRows], kt[kRows], ct[kRows], phi[kRows], contact[kRows], stress[kRows];
    double share[kLegs][kRows], speed[kLegs][kRows], rough[kLegs][kRows];
};

struct Kernel {
    Grid full{kFine, 16, 2}, reduced{kFine / 2, 32, 2 / kHighest};
    float ride[14][kRows], sums[kLegs][4][kRows];
    double shift[kLegs][kRows];
    alignas(64) float spectrum[4 * kFine];
    double total[kRows];

    void coefficients(const Columns& c) {
        const float w = 2 * kPi * kCentre;
        for (int r = 0; r < kRows; r++) {
            float m = 1 / (float)c.ms[r], mu = (float)c.mu[r] * m, ks = (float)c.ks[r] * m / (w * w), cs = (float)c.cs[r] * m / w,
                  kt = (float)c.kt[r] * m / (w * w), ct = (float)c.ct[r] * m / w, in = mu - (float)c.phi[r] * mu;
            float undamped = ks * mu + ks + kt, i0 = cs * kt + ct * ks, i1 = cs * mu + cs + ct;
            float root = std::sqrt(undamped * undamped - 4 * mu * ks * kt), low = 2 * ks * kt / (undamped + root), up = (undamped + root) / (2 * mu);
            float zl = (i0 - low * i1) / root, zu = (up * i1 - i0) / root, spring = ks * (1 + in), damper = cs * (1 + in);
            float all[14] = {ks * kt, -undamped - cs * ct, mu, i0, -i1, kt * kt, ct * ct, spring * spring,
                             damper * damper - 2 * in * spring, in * in, low, up, zl * zl / low, zu * zu / up};
            for (int k = 0; k < 14; k++) ride[k][r] = all[k];
        }
    }

    const Grid& gridOf(int r) const {
        double greatest = shift[0][r];
        for (int l = 1; l < kLegs; l++) greatest = std::max(greatest, shift[l][r]);
        float low = ride[10][r], up = ride[11][r], zl = ride[12][r], zu = ride[13][r], least = 4 * 0.18f * 0.18f;
        bool ok = greatest <= reduced.greatest && low >= 0.0288f && up <= 32 && zl >= least && zl <= 4 && zu >= least && zu <= 4;
        return ok ? reduced : full;
    }

    template <int N> void row(const Grid& g, int r) {
        const float *x = g.x.data(), *w = g.weights.data();
        float a[10];
        for (int k = 0; k < 10; k++) a[k] = ride[k][r];
        for (int i = 0; i < N; i++) {
            float re = (a[2] * x[i] + a[1]) * x[i] + a[0], im = a[4] * x[i] + a[3];
            float gain = (a[6] * x[i] + a[5]) * ((a[9] * x[i] + a[8]) * x[i] + a[7]) / (re * re + im * im * x[i]);
            for (int k = 0; k < 4; k++) spectrum[k * N + i] = gain * w[k * N + i];
        }
        for (int l = 0; l < kLegs; l++) {
            double position = std::max(shift[l][r] - std::log(kLeastShift), 0.0) * g.phases / g.step;
            int substep = (int)position, at = substep % g.phases * g.length + substep / g.phases;
            float part = (float)(position - substep), m0 = 0, m1 = 0, m2 = 0, m4 = 0;
            const float *v = g.values.data() + at, *s = g.slopes.data() + at;
            for (int i = 0; i < N; i++) {
                float e = v[i] + part * s[i];
                m0 += e * spectrum[i];
                m1 += e * spectrum[N + i];
                m2 += e * spectrum[2 * N + i];
                m4 += e * spectrum[3 * N + i];
            }
            sums[l][0][r] = m0; sums[l][1][r] = m1; sums[l][2][r] = m2; sums[l][3][r] = m4;
        }
    }

    static double between(double y, double power, double a, double complete, double upper) {
        double series = power / a * (1 + y / (a + 1) * (1 + y / (a + 2) * (1 + y / (a + 3))));
        return y < 0.01 ? series : complete - upper;
    }

    static double exponential(double q, double y) {
        double e = std::exp(-y), y2 = y * y;
        double above = e * (6 + 6 * y + 3 * y2 + y2 * y), upper = 20 * above + e * y2 * y2 * (5 + y);
        return q * q * q * (above + q * q * between(y, e * y2 * y2 * y2, 6, 120, upper));
    }

    static double rayleigh(double q, double z) {
        double y = z * z, e = std::exp(-y), tail = std::sqrt(kPi) * std::erfc(z);
        double above = 0.75 * tail + z * e * (1.5 + y), upper = 2.5 * above + z * e * y * y;
        return q * q * q * (above + q * q * between(y, z * e * y * y * y, 3.5, 3.32335097044784255, upper));
    }

    void damage(const Columns& c, int l) {
        const double knee = std::pow(10, (kLogA2 - kLogA1) / 2), atKnee = std::pow(10, 3 * std::log10(knee) - kLogA1);
        const double w2 = 4 * kPi * kPi * kCentre * kCentre;
        for (int r = 0; r < kRows; r++) {
            double force = c.ms[r] * w2 * 0.1 / kCentre * c.stress[r] * 2 * std::sqrt(2.0) / knee, k = force * force * c.rough[l][r] * c.speed[l][r];
            double m0 = k * sums[l][0][r], m1 = k * sums[l][1][r], m2 = k * sums[l][2][r], m4 = k * sums[l][3][r];
            double s0 = std::sqrt(m0), peaks = std::sqrt(m4 / m2), a2 = m2 / std::sqrt(m0 * m4), xm = m1 / m0 / peaks;
            double d1 = 2 * (xm - a2 * a2) / (1 + a2 * a2), rest = 1 - a2 - d1 + d1 * d1, R = (a2 - xm - d1 * d1) / rest;
            double d2 = rest / (1 - R), d3 = 1 - d1 - d2, Q = 1.25 * (a2 - d3 - d2 * R) / d1, q = s0 * Q * std::sqrt(0.5);
            R = std::fabs(R);
            double sum = d1 * exponential(q, 1 / q) + d2 * rayleigh(s0 * R, 1 / (s0 * R)) + d3 * rayleigh(s0, 1 / s0);
            total[r] += c.share[l][r] * sum * peaks * kCentre * atKnee * 1000 / c.speed[l][r];
        }
    }

    void evaluate(const Columns& c) {
        coefficients(c);
        for (int l = 0; l < kLegs; l++)
            for (int r = 0; r < kRows; r++) shift[l][r] = std::log(c.contact[r] / c.speed[l][r]);
        for (int r = 0; r < kRows; r++) {
            const Grid& g = gridOf(r);
            if (&g == &reduced) row<kFine / 2>(g, r); else row<kFine>(g, r);
        }
        std::fill(total, total + kRows, 0.0);
        for (int l = 0; l < kLegs; l++) damage(c, l);
    }
};

int main() {
    static Columns c;
    static Kernel kernel;
    std::mt19937_64 generator(1);
    std::normal_distribution<double> n;
    const double legs[kLegs][3] = {{.20, 16, 80}, {.30, 64, 60}, {.25, 256, 50}, {.20, 1024, 40}, {.05, 4096, 25}};
    for (int r = 0; r < kRows; r++) {
        // The first row is the median vehicle.
        auto ln = [&](double median, double s) { return r == 0 ? median : median * std::exp(s * n(generator)); };
        auto nm = [&](double mean, double s) { return r == 0 ? mean : mean + s * n(generator); };
        c.ms[r] = ln(600, .10); c.mu[r] = nm(90, 4); c.ks[r] = ln(45e3, .08); c.cs[r] = ln(4000, .25); c.kt[r] = ln(300e3, .10);
        c.ct[r] = 200; c.phi[r] = 0.5; c.contact[r] = nm(.2, .01);
        double d = 95 - 2 * nm(6, .25);
        c.stress[r] = ln(1, .2) * nm(240, 4) / (kPi / 32 * (std::pow(95, 4) - std::pow(d, 4)) / 95);
        double speed = ln(1, .15), rough = ln(1, .30);
        for (int l = 0; l < kLegs; l++) { c.share[l][r] = legs[l][0]; c.rough[l][r] = rough * legs[l][1] * 1e-6; c.speed[l][r] = speed * legs[l][2] / 3.6; }
    }
    std::vector<double> times;
    for (int i = 0; i < 101; i++) {
        auto start = std::chrono::steady_clock::now();
        for (int k = 0; k < 150; k++) kernel.evaluate(c);
        times.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / 150 / kRows * 1e6);
    }
    std::sort(times.begin(), times.end());
    std::printf("C++: median %.4f, least %.4f us/evaluation; life of the median vehicle %.6g km\n", times[50], times[0], 1 / kernel.total[0]);
}
