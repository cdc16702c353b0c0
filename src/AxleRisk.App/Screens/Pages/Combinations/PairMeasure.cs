namespace AxleRisk.App.Screens.Pages.Combinations;

/// <summary>What the cells of the pair grid tell.</summary>
internal enum PairMeasure
{
    /// <summary>The failure probability with both in their adverse range; on the diagonal with the one alone.</summary>
    Together,

    /// <summary>That over what the two would give if their effects multiplied.</summary>
    Ratio,

    /// <summary>The Shapley interaction, a share of the variance of failure.</summary>
    Interaction,
}
