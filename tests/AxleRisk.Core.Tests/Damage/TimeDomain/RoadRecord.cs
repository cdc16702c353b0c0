using System.Numerics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;
using MathNet.Numerics.IntegralTransforms;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// One record in plain code. What drives the ride is <c>u = kt z + ct z'</c>, the road's part of the tyre force: made from the
/// spectrum as a
/// whole, so that no profile need be differentiated. With kt = 1 and ct = 0 it is the profile itself.
/// </summary>
internal static class RoadRecord
{
    /// <summary>
    /// The coefficients of a record: <c>z(t) = sum of amplitude_i (a_i cos - b_i sin)(2 pi f_i t)</c>, a and b standard normal,
    /// two numbers a
    /// sinusoid. The record is a sample of the Gaussian process of that density (Shinozuka and Deodatis 1991 on random
    /// amplitudes; from memory).
    /// </summary>
    /// <param name="amplitudes">From <see cref="RoadAmplitudes"/>.</param>
    /// <param name="normals">Twice as many standard normal numbers.</param>
    /// <param name="tyreRate">kt, N/m.</param>
    /// <param name="tyreDamping">ct, N s/m.</param>
    public static Complex[] Coefficients(
        ReadOnlySpan<double> amplitudes, ReadOnlySpan<double> normals, double tyreRate, double tyreDamping)
    {
        var coefficients = new Complex[amplitudes.Length];
        for (int i = 0; i < coefficients.Length; i++)
        {
            var tyre = new Complex(tyreRate, 2 * Math.PI * RecordGrid.Hz(i) * tyreDamping);
            coefficients[i] = amplitudes[i] * tyre * new Complex(normals[2 * i], normals[2 * i + 1]);
        }
        return coefficients;
    }

    /// <summary>The record: the real part of the sum of coefficients times exp(2 pi i f t).</summary>
    /// <param name="coefficients">From <see cref="Coefficients"/>.</param>
    /// <param name="samples">Takes one period, evenly spaced; at least <see cref="RecordGrid.BaseSamples"/> samples.</param>
    public static void Fill(ReadOnlySpan<Complex> coefficients, Span<double> samples)
    {
        var spectrum = new Complex[samples.Length];
        coefficients.CopyTo(spectrum.AsSpan(RecordGrid.LowestBin));
        Fourier.Inverse(spectrum, FourierOptions.NoScaling);
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = spectrum[i].Real;
        }
    }

    /// <summary>The state at the first sample of a record in its periodic steady state.</summary>
    /// <param name="p">The ride.</param>
    /// <param name="coefficients">The record, from <see cref="Coefficients"/>.</param>
    /// <param name="state">Takes the state.</param>
    public static void FirstState(in RideParameters p, ReadOnlySpan<Complex> coefficients, Span<double> state)
    {
        state.Clear();
        Span<Complex> gain = stackalloc Complex[RideMatrix.States];
        for (int i = 0; i < coefficients.Length; i++)
        {
            SteadyState.Gain(p, RecordGrid.Hz(i), gain);
            for (int k = 0; k < RideMatrix.States; k++)
            {
                state[k] += (gain[k] * coefficients[i]).Real;
            }
        }
    }
}
