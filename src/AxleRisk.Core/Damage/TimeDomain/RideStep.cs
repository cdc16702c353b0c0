using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// One step of the ride in time. The linear part is exact for an input that is, within the step, the cubic through four samples (the one
/// before, the two ends, the one after); forces beyond the linear law are taken as straight between the step's ends, by a predictor and a
/// corrector (second order: Cox and Matthews 2002, from memory).
/// </summary>
internal sealed class RideStep
{
    private const int Powers = 4;

    /// <summary>Discretises a ride.</summary>
    /// <param name="ride">The ride.</param>
    /// <param name="seconds">Length of the step, s.</param>
    public RideStep(in RideParameters ride, double seconds)
    {
        double[,] system = RideMatrix.System(ride);
        double[,] tyre = Integrals(system, RideMatrix.Tyre(ride), seconds, Transition);
        double[,] suspension = Integrals(system, RideMatrix.Suspension(ride), seconds, Transition);
        for (int i = 0; i < RideMatrix.States; i++)
        {
            (double c, double s, double s2, double s3) = (tyre[i, 0], tyre[i, 1], tyre[i, 2], tyre[i, 3]);

            // Lagrange's cubics of the samples at s = -1, 0, 1, 2, s running from 0 to 1 over the step.
            Input[0, i] = (-2 * s + 3 * s2 - s3) / 6;
            Input[1, i] = (2 * c - s - 2 * s2 + s3) / 2;
            Input[2, i] = (2 * s + s2 - s3) / 2;
            Input[3, i] = (s3 - s) / 6;
            TyreHeld[i] = c;
            TyreRising[i] = s;
            SuspensionHeld[i] = suspension[i, 0];
            SuspensionRising[i] = suspension[i, 1];
        }
    }

    /// <summary>From the state to the next one.</summary>
    public double[,] Transition { get; } = new double[RideMatrix.States, RideMatrix.States];

    /// <summary>Weights of the input one sample before the step, at its ends, and one after: by sample and state.</summary>
    public double[,] Input { get; } = new double[Powers, RideMatrix.States];

    /// <summary>Response to a further tyre force held over the step.</summary>
    public double[] TyreHeld { get; } = new double[RideMatrix.States];

    /// <summary>Response to a further tyre force rising from 0 to 1 over the step.</summary>
    public double[] TyreRising { get; } = new double[RideMatrix.States];

    /// <summary>Response to a further suspension force held over the step.</summary>
    public double[] SuspensionHeld { get; } = new double[RideMatrix.States];

    /// <summary>Response to a further suspension force rising from 0 to 1 over the step.</summary>
    public double[] SuspensionRising { get; } = new double[RideMatrix.States];

    // Responses to 1, s, s^2 and s^3 over the step from one matrix exponential: a chain of integrators drives the system (Van Loan 1978).
    private static double[,] Integrals(double[,] system, double[] column, double seconds, double[,] transition)
    {
        const int n = RideMatrix.States;
        var augmented = new double[n + Powers, n + Powers];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                augmented[i, j] = seconds * system[i, j];
            }

            augmented[i, n] = seconds * column[i];
        }
        for (int k = 0; k + 1 < Powers; k++)
        {
            augmented[n + k, n + k + 1] = 1;
        }

        double[,] exponential = MatrixExponential.Of(augmented);
        var responses = new double[n, Powers];
        double factorial = 1;
        for (int k = 0; k < Powers; k++)
        {
            factorial *= Math.Max(1, k);
            for (int i = 0; i < n; i++)
            {
                responses[i, k] = factorial * exponential[i, n + k];
            }
        }
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                transition[i, j] = exponential[i, j];
            }
        }
        return responses;
    }
}
