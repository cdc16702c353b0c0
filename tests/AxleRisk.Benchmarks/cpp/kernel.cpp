// The batch kernel's algorithm in plain C++, single precision: loops over rows that the compiler may vectorise, no intrinsics. Prints
// microseconds per evaluation of the five-leg benchmark case (that of ../FiveLegCase.cs with another generator), the life of the median
// vehicle and the rows' mean damage, and fails if either is not what it should be: DNV-RP-C203 class E, mean curve, Dirlik.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <random>
#include <vector>

// Rows side by side in the sums over frequencies: 16, as with 8 the compiler vectorises across the sums instead.
#ifndef LANES
#define LANES 16
#endif
constexpr int kRows = 256, kTile = 256, kLanes = LANES, kLegs = 5, kFine = 128, kEnds = 12, kSmooth = 14;
constexpr double kPi = 3.14159265358979323846, kLowest = 0.25, kHighest = 50, kCentre = 3.5355339059327378, kLeastShift = 2e-6;
constexpr double kLogA1 = 12.010 + 0.4, kLogA2 = 15.350 + 0.4;

// Of a row: coefficients of the ride, what the choice of the grid needs, shifts of the legs.
enum { kReal = 0, kImaginary = 3, kTyre = 5, kInner = 7, kLower = 10, kUpper, kLowerDamping, kUpperDamping, kShift, kInputs = kShift + kLegs };
using Inputs = float[kInputs][kTile];
using Sums = float[kLegs][4][kTile];

struct Grid {
    int points, smooth = 0;
    float least, greatest, lowest, highest, shift;
    std::vector<float> f, x, smoothWeights, weights;

    Grid(int points, double damping, double lowestHz, double highestHz, double greatestShift)
        : points(points), least(4 * damping * damping), greatest(4), lowest(std::pow(lowestHz / kCentre, 2)),
          highest(std::pow(highestHz / kCentre, 2)), shift(greatestShift * kCentre), f(points), x(points),
          smoothWeights(kSmooth * points), weights(4 * points) {
        const double whole = std::log(kHighest / kLowest), step = whole / (points - 1);
        const double orders[] = {0, 1, 2, 4}, smoothOrders[kSmooth] = {0, 2, 4, 6, 8, 10, 12, 14, 1, 3, 5, 7, 9, 11};
        std::vector<double> ends(points);
        endWeights(whole / (kFine - 1) / step, ends);
        for (int i = 0; i < points; i++) {
            double at = kLowest / kCentre * std::exp(step * i), w = kCentre * at * step * (1 + ends[i] + ends[points - 1 - i]);
            f[i] = at;
            x[i] = at * at;
            if (at * kCentre * greatestShift <= 0.7) {
                smooth++;
                for (int k = 0; k < kSmooth; k++) smoothWeights[kSmooth * i + k] = w * std::pow(at, 2 + smoothOrders[k]);
            } else
                for (int k = 0; k < 4; k++) weights[4 * i + k] = w * std::pow(at, orders[k]);
        }
    }

    static void endWeights(double finer, std::vector<double>& w) {
        if (finer == 1) { w[0] = -0.5; return; }
        const double zeta[kEnds] = {0, -1.0 / 12, 0, 1.0 / 120, 0, -1.0 / 252, 0, 1.0 / 240, 0, -1.0 / 132, 0, 691.0 / 32760};
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

    // 1 for the rows whose ride and legs all keep the rule.
    void admit(const Inputs& in, int* admitted) const {
        for (int r = 0; r < kTile; r++) {
            int ok = in[kLower][r] > lowest & in[kUpper][r] < highest & in[kLowerDamping][r] > least & in[kLowerDamping][r] < greatest
                & in[kUpperDamping][r] > least & in[kUpperDamping][r] < greatest;
            for (int l = 0; l < kLegs; l++) ok &= in[kShift + l][r] < shift;
            admitted[r] = ok;
        }
    }
};

// exp of what is not above 87; what is below -87 might as well be it.
inline float exponential(float x) {
    x = x < -87 ? -87 : x;
    float n = std::rint(x * 1.44269504f), r = x - n * 0.693359375f + n * 2.12194440e-4f;
    float sum = ((((0.00829030611f * r + 0.0418979754f) * r + 0.166676366f) * r + 0.499991492f) * r + 0.999999707f) * r + 1;
    int bits;
    std::memcpy(&bits, &sum, sizeof bits);
    bits += (int)n * (1 << 23);
    std::memcpy(&sum, &bits, sizeof bits);
    return sum;
}

// exp(1/y^2) erfc(1/y) of y above 0.
inline float scaledErfcOfInverse(float y) {
    float below = 2.5f * y + 1, doubled = y + 2, inverse = 1 / (below * doubled), q = (1 - 2.5f * y) * (inverse * doubled);
    float sum = 0.000392525739f * q + 0.000305500137f;
    sum = sum * q - 0.0041510826f;
    sum = sum * q + 0.00108260797f;
    sum = sum * q + 0.0326557148f;
    sum = sum * q - 0.103017943f;
    sum = sum * q + 0.15765035f;
    sum = sum * q - 0.0990185193f;
    sum = sum * q - 0.122357917f;
    sum = sum * q + 1.26483807f;
    return sum * (inverse * below * y);
}

// Ranges of a Weibull density of shape 1 or 2 on slopes 3 and 5: where y = q^-shape is too small the difference of the plain form loses its
// digits, and the series of the lower function serves.
template <int Shape> struct Part {
    static constexpr int kTerms = 24;
    float leastPlain, series[kTerms];
    int terms = 1;

    static double upper(double a, double y) {
        double at = a == std::floor(a) ? 1 : 0.5, sum = at == 1 ? std::exp(-y) : std::sqrt(kPi) * std::erfc(std::sqrt(y));
        for (; at < a; at++) sum = at * sum + std::pow(y, at) * std::exp(-y);
        return sum;
    }

    Part() {
        const double a1 = 1 + 3.0 / Shape, a2 = 1 + 5.0 / Shape;
        auto loss = [&](double y) {
            double q = std::pow(y, -1.0 / Shape), q3 = q * q * q, complete = q3 * q * q * std::tgamma(a2);
            return complete / (q3 * upper(a1, y) + complete - q3 * q * q * upper(a2, y));
        };
        double y = 20, term = 1 / a2;
        while (loss(0.95 * y) <= 40) y *= 0.95;
        leastPlain = y;
        series[0] = term;
        for (int k = 1; term * std::pow(y, k - 1) > 1e-7 / a2 && k < kTerms; k++) series[terms++] = term /= a2 + k;
    }

    static float plain(float q, float y) {
        float q2 = q * q, q3 = q2 * q, q5 = q3 * q2;
        if (Shape == 1) return exponential(-y) * q * ((((-120 * q - 120) * q - 54) * q - 14) * q - 2) + 120 * q5;
        float weights = 1.32934039f * q3 - 3.32335097f * q5;
        return exponential(-y) * (weights * scaledErfcOfInverse(q) + q2 * (-3.75f * q2 - 1)) + 3.32335097f * q5;
    }

    float ofSmall(float q, float y) const {
        float sum = series[terms - 1], q2 = q * q;
        for (int k = terms - 2; k >= 0; k--) sum = sum * y + series[k];
        float above = Shape == 1 ? ((6 * q + 6) * q + 3) * q + 1 : 1.5f * q2 + 1 + 1.32934039f * q2 * q * scaledErfcOfInverse(q);
        return exponential(-y) * (above + y * sum);
    }

    // Factors of 0 and 1, as a branch would keep the loop from being vectorised.
    void add(const float* __restrict weight, const float* __restrict scale, const float* __restrict inverse, float* __restrict sum) const {
        int left = 0;
        for (int r = 0; r < kTile; r++) {
            float y = Shape == 1 ? inverse[r] : inverse[r] * inverse[r], isPlain = y < leastPlain ? 0.0f : 1.0f;
            sum[r] += weight[r] * isPlain * plain(scale[r], y);
            left += y < leastPlain ? 1 : 0;
        }
        if (left == 0) return;
        for (int r = 0; r < kTile; r++) {
            float y = Shape == 1 ? inverse[r] : inverse[r] * inverse[r], isSmall = y < leastPlain ? 1.0f : 0.0f;
            sum[r] += weight[r] * isSmall * ofSmall(scale[r], std::min(y, leastPlain));
        }
    }
};

struct Columns {
    double ms[kRows], mu[kRows], ks[kRows], cs[kRows], kt[kRows], ct[kRows], phi[kRows], contact[kRows], stress[kRows];
    double share[kLegs][kRows], speed[kLegs][kRows], rough[kLegs][kRows];
};

struct Kernel {
    const Grid grids[3] = {{kFine * 3 / 8, 0.18, 0.9, 15, 2 / kHighest}, {kFine * 5 / 8, 0.12, 0.8, 18, 2.5 / kHighest}, {kFine, 0, 0, 1e9, 2}};
    const Part<1> ofExponential;
    const Part<2> ofRayleigh;
    alignas(64) Inputs inputs, picked;
    alignas(64) Sums sums, pickedSums;
    alignas(64) float spectrum[kFine * kLanes], smooth[kSmooth][kLanes], scaleRoot[kLegs][kTile], damageOfLeg[kTile];
    alignas(64) float weight[3][kTile], scale[3][kTile], inverse[3][kTile];
    int grid[kTile], places[kTile];
    double total[kRows];

    void coefficients(const Columns& c, int first) {
        const float w = 2 * kPi * kCentre;
        for (int r = 0; r < kTile; r++) {
            int at = first + r;
            float m = 1 / (float)c.ms[at], perRate = m * (1 / (w * w)), perDamping = m * (1 / w), mu = (float)c.mu[at] * m;
            float ks = (float)c.ks[at] * perRate, cs = (float)c.cs[at] * perDamping, kt = (float)c.kt[at] * perRate;
            float ct = (float)c.ct[at] * perDamping, in = mu - (float)c.phi[at] * mu;
            float undamped = ks * mu + ks + kt, i0 = cs * kt + ct * ks, i1 = cs * mu + cs + ct;
            float root = std::sqrt(undamped * undamped - 4 * mu * ks * kt), low = 2 * ks * kt / (undamped + root), up = (undamped + root) / (2 * mu);
            float zl = (i0 - low * i1) / root, zu = (up * i1 - i0) / root, spring = ks * (1 + in), damper = cs * (1 + in);
            inputs[kReal][r] = ks * kt;
            inputs[kReal + 1][r] = -undamped - cs * ct;
            inputs[kReal + 2][r] = mu;
            inputs[kImaginary][r] = i0;
            inputs[kImaginary + 1][r] = -i1;
            inputs[kTyre][r] = kt * kt;
            inputs[kTyre + 1][r] = ct * ct;
            inputs[kInner][r] = spring * spring;
            inputs[kInner + 1][r] = damper * damper - 2 * in * spring;
            inputs[kInner + 2][r] = in * in;
            inputs[kLower][r] = low;
            inputs[kUpper][r] = up;
            inputs[kLowerDamping][r] = zl * zl / low;
            inputs[kUpperDamping][r] = zu * zu / up;
        }
    }

    void scales(const Columns& c, int first, int leg) {
        const double knee = std::pow(10, (kLogA2 - kLogA1) / 2), w = 2 * kPi * kCentre;
        const float perStress = 2 * std::sqrt(2.0) / knee, perForce = w * w * 0.1 / kCentre, least = kLeastShift, centre = kCentre;
        for (int r = 0; r < kTile; r++) {
            float speed = c.speed[leg][first + r], seconds = (float)c.contact[first + r] / speed;
            inputs[kShift + leg][r] = (seconds < least ? least : seconds) * centre;
            float force = (float)c.ms[first + r] * ((float)c.stress[first + r] * perStress) * perForce;
            scaleRoot[leg][r] = force * std::sqrt((float)c.rough[leg][first + r] * speed);
        }
    }

    void fillSpectrum(const Inputs& in, int row, const Grid& g) {
        const float* x = g.x.data();
        float a[10][kLanes];
        for (int k = 0; k < 10; k++)
            for (int l = 0; l < kLanes; l++) a[k][l] = in[k][row + l];
        for (int i = 0; i < g.points; i++)
            for (int l = 0; l < kLanes; l++) {
                float re = (a[2][l] * x[i] + a[1][l]) * x[i] + a[0][l], im = a[4][l] * x[i] + a[3][l];
                float above = (a[6][l] * x[i] + a[5][l]) * ((a[9][l] * x[i] + a[8][l]) * x[i] + a[7][l]);
                spectrum[i * kLanes + l] = above / (re * re + im * im * x[i]);
            }
    }

    // In two passes, as all sums at once do not fit the registers; each sum an array of its own, which the compiler then keeps in one.
    void sumEven(const Grid& g) {
        const float* w = g.smoothWeights.data();
        float m0[kLanes] = {}, m2[kLanes] = {}, m4[kLanes] = {}, m6[kLanes] = {}, m8[kLanes] = {}, m10[kLanes] = {}, m12[kLanes] = {}, m14[kLanes] = {};
        for (int i = 0; i < g.smooth; i++, w += kSmooth)
            for (int l = 0; l < kLanes; l++) {
                float density = spectrum[i * kLanes + l];
                m0[l] += density * w[0];
                m2[l] += density * w[1];
                m4[l] += density * w[2];
                m6[l] += density * w[3];
                m8[l] += density * w[4];
                m10[l] += density * w[5];
                m12[l] += density * w[6];
                m14[l] += density * w[7];
            }
        const float* all[] = {m0, m2, m4, m6, m8, m10, m12, m14};
        for (int k = 0; k < 8; k++) std::memcpy(smooth[k], all[k], sizeof m0);
    }

    void sumOdd(const Grid& g) {
        const float* w = g.smoothWeights.data() + 8;
        float m1[kLanes] = {}, m3[kLanes] = {}, m5[kLanes] = {}, m7[kLanes] = {}, m9[kLanes] = {}, m11[kLanes] = {};
        for (int i = 0; i < g.smooth; i++, w += kSmooth)
            for (int l = 0; l < kLanes; l++) {
                float density = spectrum[i * kLanes + l];
                m1[l] += density * w[0];
                m3[l] += density * w[1];
                m5[l] += density * w[2];
                m7[l] += density * w[3];
                m9[l] += density * w[4];
                m11[l] += density * w[5];
            }
        const float* all[] = {m1, m3, m5, m7, m9, m11};
        for (int k = 0; k < 6; k++) std::memcpy(smooth[8 + k], all[k], sizeof m1);
    }

    void legMoments(const Inputs& in, int row, const Grid& g, int leg, Sums& to) {
        const float *f = g.f.data(), *w = g.weights.data(), *s = in[kShift + leg] + row;
        float m0[kLanes], m1[kLanes], m2[kLanes], m4[kLanes], shift[kLanes];
        for (int l = 0; l < kLanes; l++) {
            float s2 = s[l] * s[l], s4 = s2 * s2;
            float e[] = {0.999999558f * s2, -3.28980225f * s4, 4.32770023f * s4 * s2, -3.03789012f * s4 * s4, 1.28147463f * s4 * s4 * s2,
                         -0.290628781f * s4 * s4 * s4};
            float a = 0, b = 0, c = 0, d = 0;
            for (int k = 0; k < 6; k++) {
                a += e[k] * smooth[k][l];
                b += e[k] * smooth[8 + k][l];
                c += e[k] * smooth[1 + k][l];
                d += e[k] * smooth[2 + k][l];
            }
            m0[l] = a; m1[l] = b; m2[l] = c; m4[l] = d; shift[l] = s[l];
        }
        for (int i = g.smooth; i < g.points; i++)
            for (int l = 0; l < kLanes; l++) {
                float p = f[i] * shift[l], rest = p - std::rint(p), x = rest * rest;
                float polynomial = (((1.10042998f * x - 2.99867571f) * x + 4.32425218f) * x - 3.28969546f) * x + 0.999998998f;
                float density = spectrum[i * kLanes + l] * x * polynomial;
                m0[l] += density * w[4 * i];
                m1[l] += density * w[4 * i + 1];
                m2[l] += density * w[4 * i + 2];
                m4[l] += density * w[4 * i + 3];
            }
        for (int l = 0; l < kLanes; l++) {
            float perSquare = 1 / (shift[l] * shift[l]);
            to[leg][0][row + l] = m0[l] * perSquare;
            to[leg][1][row + l] = m1[l] * perSquare;
            to[leg][2][row + l] = m2[l] * perSquare;
            to[leg][3][row + l] = m4[l] * perSquare;
        }
    }

    void moments(const Inputs& in, int row, const Grid& g, Sums& to) {
        fillSpectrum(in, row, g);
        sumEven(g);
        sumOdd(g);
        for (int l = 0; l < kLegs; l++) legMoments(in, row, g, l, to);
    }

    // Rows of the first grid where they are, those of another picked out and done together.
    void allMoments() {
        int first[kTile], second[kTile];
        grids[0].admit(inputs, first);
        grids[1].admit(inputs, second);
        for (int r = 0; r < kTile; r++) grid[r] = first[r] ? 0 : second[r] ? 1 : 2;
        for (int r = 0; r < kTile; r += kLanes)
            if (std::count(grid + r, grid + r + kLanes, 0)) moments(inputs, r, grids[0], sums);
        for (int g = 1; g < 3; g++) {
            int count = 0;
            for (int r = 0; r < kTile; r++)
                if (grid[r] == g) places[count++] = r;
            if (!count) continue;
            int padded = (count + kLanes - 1) / kLanes * kLanes;
            std::fill(places + count, places + padded, places[count - 1]);
            for (int k = 0; k < kInputs; k++)
                for (int i = 0; i < padded; i++) picked[k][i] = inputs[k][places[i]];
            for (int i = 0; i < count; i += kLanes) moments(picked, i, grids[g], pickedSums);
            for (int l = 0; l < kLegs; l++)
                for (int k = 0; k < 4; k++)
                    for (int i = 0; i < count; i++) sums[l][k][places[i]] = pickedSums[l][k][i];
        }
    }

    // Dirlik's parts. A row whose spectrum is too narrow would be left to other code; this case has none, or the answer would show it.
    void parts(int leg) {
        const auto& s = sums[leg];
        for (int r = 0; r < kTile; r++) {
            float k = scaleRoot[leg][r], s0 = std::sqrt(s[0][r]), s2 = std::sqrt(s[2][r]), s4 = std::sqrt(s[3][r]), sigma = s0 * k, s24 = s2 * s4;
            float all = 1 / (sigma * s24), over = all * s24, over0 = over * k, over2 = all * sigma * s4, peaks = s4 * over2;
            float a2 = s[2][r] * all * k * s2, xm = s[1][r] * over0 * over2 * a2, square = a2 * a2;
            float d1 = 2 * (xm - square) / (1 + square), rest = 1 - a2 - d1 + d1 * d1, top = a2 - xm - d1 * d1, gap = rest - top;
            float common = 1 / (rest * gap), R = std::fabs(top * gap * common), d2 = rest * rest * rest * common, d3 = 1 - d1 - d2;
            float reduced = (float)(1.25 * 0.70710678118654752440) * (a2 - d3 - d2 * top * gap * common), inverses = 1 / (d1 * reduced * R);
            peaks = a2 < 1 - 1e-3f & reduced * d1 > 0 ? peaks : -1e30f;
            weight[0][r] = peaks * d1;
            scale[0][r] = sigma * reduced * reduced * R * inverses;
            inverse[0][r] = over * d1 * d1 * R * inverses;
            weight[1][r] = peaks * d2;
            scale[1][r] = sigma * R;
            inverse[1][r] = over * d1 * reduced * inverses;
            weight[2][r] = peaks * d3;
            scale[2][r] = sigma;
            inverse[2][r] = over;
        }
    }

    void damage(const Columns& c, int first, int leg) {
        parts(leg);
        std::fill(damageOfLeg, damageOfLeg + kTile, 0.0f);
        ofExponential.add(weight[0], scale[0], inverse[0], damageOfLeg);
        for (int p = 1; p < 3; p++) ofRayleigh.add(weight[p], scale[p], inverse[p], damageOfLeg);
        const float perKm = 1000 * kCentre * std::pow(10, 3 * (kLogA2 - kLogA1) / 2 - kLogA1);
        for (int r = 0; r < kTile; r++)
            total[first + r] += damageOfLeg[r] * (perKm * ((float)c.share[leg][first + r] / (float)c.speed[leg][first + r]));
    }

    void evaluate(const Columns& c) {
        std::fill(total, total + kRows, 0.0);
        for (int first = 0; first < kRows; first += kTile) {
            coefficients(c, first);
            for (int l = 0; l < kLegs; l++) scales(c, first, l);
            allMoments();
            for (int l = 0; l < kLegs; l++) damage(c, first, l);
        }
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
    double life = 1 / kernel.total[0], mean = 0;
    for (double damage : kernel.total) mean += damage / kRows;
    std::printf("C++: median %.4f, least %.4f us/evaluation; life of the median vehicle %.6g km, mean damage %.6e per km\n", times[50], times[0], life, mean);

    // Both with 64 or 128 points a row, sums in single and damage in double precision; the mean with the normal numbers of GNU's library.
    bool right = std::fabs(life / 486589 - 1) < 1e-5 && std::fabs(mean / 3.729093e-6 - 1) < 1e-5;
    if (!right) std::fprintf(stderr, "not the known life of 486589 km and mean damage of 3.729093e-06 per km\n");
    return right ? 0 : 1;
}
