namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>How the stress cycles of a random signal are counted from its spectrum.</summary>
internal enum CountingMethod
{
    /// <summary>Dirlik's rainflow range density (1985).</summary>
    Dirlik,

    /// <summary>The narrow-band (Rayleigh) bound.</summary>
    NarrowBand,

    /// <summary>Tovo and Benasciutti (2005).</summary>
    TovoBenasciutti,
}
