// The linear ride in time in plain C++: road by a radix-2 transform, ride by its exact step, cycles by the three-point rule. Prints
// simulated seconds per second of processor time, for the comparison in docs/performance.md.
#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdio>
#include <ctime>
#include <random>
#include <vector>

using Complex = std::complex<double>;
constexpr int Seconds = 64, Rate = 512, Length = Seconds * Rate, Records = 16;
constexpr double Ms = 600, Mu = 90, Ks = 45e3, Cs = 4000, Kt = 300e3, Ct = 200, Phi = 0.5;
constexpr double Speed = 50 / 3.6, Roughness = 1024e-6, Contact = 0.2, Stress = 0.012, Pi = 3.14159265358979323846;

// Inverse transform in place, no scaling.
static void transform(std::vector<Complex>& x, const std::vector<Complex>& circle) {
    const int n = (int)x.size();
    for (int i = 1, j = 0; i < n; i++) {
        int bit = n >> 1;
        for (; j & bit; bit >>= 1) j ^= bit;
        j ^= bit;
        if (i < j) std::swap(x[i], x[j]);
    }
    for (int size = 2; size <= n; size *= 2)
        for (int start = 0; start < n; start += size)
            for (int k = 0; k < size / 2; k++) {
                const Complex w = circle[(size_t)k * (n / size)], b = x[start + k + size / 2];
                const Complex t(w.real() * b.real() - w.imag() * b.imag(), w.real() * b.imag() + w.imag() * b.real());
                x[start + k + size / 2] = x[start + k] - t;
                x[start + k] += t;
            }
}

// One step by the Taylor series of the exponential: transition, and weights of the input at its two ends (first-order hold).
static void discretise(double a[6][6]) {
    double term[6][6] = {}, sum[6][6] = {};
    for (int i = 0; i < 6; i++) term[i][i] = sum[i][i] = 1;
    for (int k = 1; k < 40; k++) {
        double next[6][6] = {};
        for (int i = 0; i < 6; i++)
            for (int j = 0; j < 6; j++)
                for (int l = 0; l < 6; l++) next[i][j] += term[i][l] * a[l][j] / k;
        for (int i = 0; i < 6; i++)
            for (int j = 0; j < 6; j++) { term[i][j] = next[i][j]; sum[i][j] += next[i][j]; }
    }
    for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++) a[i][j] = sum[i][j];
}

struct Rainflow {
    std::vector<double> points;
    double damage = 0;
    void count(double range, double n) {
        const double s = Stress * range, knee = std::pow(10, (15.750 - 12.410) / 2), square = s * s;
        damage += n * (s >= knee ? square * s * std::pow(10, -12.410) : square * square * s * std::pow(10, -15.750));
    }
    void add(double point) {
        points.push_back(point);
        while (points.size() >= 3) {
            const size_t n = points.size();
            const double earlier = std::abs(points[n - 2] - points[n - 3]);
            if (std::abs(points[n - 1] - points[n - 2]) < earlier) return;
            if (n == 3) { count(earlier, 0.5); points.erase(points.begin()); }
            else { count(earlier, 1); points[n - 3] = points[n - 1]; points.resize(n - 2); }
        }
    }
};

int main() {
    std::mt19937_64 generator(1);
    std::normal_distribution<double> normal;
    std::vector<Complex> circle(Length / 2), x(Length);
    for (int i = 0; i < Length / 2; i++) circle[i] = std::polar(1.0, 2 * Pi * i / Length);
    const double h = 1.0 / Rate;
    double a[6][6] = {{0, h}, {-h * Ks / Ms, -h * Cs / Ms, h * Ks / Ms, h * Cs / Ms}, {0, 0, 0, h},
                      {h * Ks / Mu, h * Cs / Mu, -h * (Ks + Kt) / Mu, -h * (Cs + Ct) / Mu, h / Mu}, {0, 0, 0, 0, 0, 1}};
    discretise(a);
    double least = 1e9, mean = 0;
    std::vector<double> u(Length), force(Length);
    const int repetitions = 5;
    for (int repetition = 0; repetition < repetitions; repetition++) {
        const std::clock_t start = std::clock();
        double damage = 0;
        for (int record = 0; record < Records; record += 2) {
            // Two records a transform: real and imaginary part.
            std::fill(x.begin(), x.end(), 0);
            for (int k = Seconds / 4; k <= 50 * Seconds; k++) {
                const double f = (double)k / Seconds, n = f / Speed, arc = Pi * n * Contact, sinc = std::sin(arc) / arc;
                const double amplitude = 0.5 * std::sqrt(Roughness * 0.01 / (n * n) / Speed / Seconds) * std::abs(sinc);
                const Complex tyre = amplitude * Complex(Kt, 2 * Pi * f * Ct);
                const Complex p = tyre * Complex(normal(generator), normal(generator)), q = tyre * Complex(normal(generator), normal(generator));
                x[k] = Complex(p.real() - q.imag(), p.imag() + q.real());
                x[Length - k] = Complex(p.real() + q.imag(), q.real() - p.imag());
            }
            transform(x, circle);
            for (int half = 0; half < 2; half++) {
                for (int i = 0; i < Length; i++) u[i] = half ? x[i].imag() : x[i].real();
                double s[4] = {};
                for (int i = Length - 8 * Rate; i < 2 * Length; i++) {
                    const double now = u[i % Length], then = u[(i + 1) % Length];
                    const double tyre = now - Kt * s[2] - Ct * s[3], spring = -Ks * (s[2] - s[0]) - Cs * (s[3] - s[1]);
                    if (i >= Length) force[i - Length] = tyre - Phi * (tyre + spring);
                    double next[4];
                    for (int r = 0; r < 4; r++)
                        next[r] = a[r][0] * s[0] + a[r][1] * s[1] + a[r][2] * s[2] + a[r][3] * s[3] + (a[r][4] - a[r][5]) * now + a[r][5] * then;
                    for (int r = 0; r < 4; r++) s[r] = next[r];
                }
                Rainflow rainflow;
                rainflow.add(force[0]);
                for (int i = 1; i + 1 < Length; i++)
                    if ((force[i] - force[i - 1]) * (force[i + 1] - force[i]) < 0) rainflow.add(force[i]);
                rainflow.add(force[Length - 1]);
                for (size_t i = 1; i < rainflow.points.size(); i++) rainflow.count(std::abs(rainflow.points[i] - rainflow.points[i - 1]), 0.5);
                damage += rainflow.damage;
            }
        }
        least = std::min(least, (double)(std::clock() - start) / CLOCKS_PER_SEC);
        mean += damage / (Records * Seconds) / repetitions;
    }
    std::printf("whole %12.0f   damage per second %.4e\n", Records * Seconds / least, mean);
}
