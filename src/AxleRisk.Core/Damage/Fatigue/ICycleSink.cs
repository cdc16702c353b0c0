namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>What takes counted cycles.</summary>
internal interface ICycleSink
{
    /// <summary>Takes a cycle.</summary>
    /// <param name="range">Its range, in the signal's unit.</param>
    /// <param name="mean">Its mean.</param>
    /// <param name="count">1, or 1/2 for a half cycle.</param>
    void Add(double range, double mean, double count);
}
