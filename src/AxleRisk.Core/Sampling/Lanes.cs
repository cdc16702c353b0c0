namespace AxleRisk.Core.Sampling;

/// <summary>What a plan reads from the lanes of a factor's stream; lane 0 holds the plain samples.</summary>
internal static class Lanes
{
    public const int Permutation = 1;
    public const int Scrambling = 2;
}
