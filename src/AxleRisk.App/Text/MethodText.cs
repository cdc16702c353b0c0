namespace AxleRisk.App.Text;

/// <summary>The method and its limits in words, for a reader who has nothing but a report.</summary>
internal static class MethodText
{
    /// <summary>What one evaluation computes, and what is done with many.</summary>
    public static IReadOnlyList<string> Steps { get; } =
    [
        "Road: the spectrum of the road's height after ISO 8608, by class or stated roughness, smoothed over the tyre's contact; "
            + "corrugation where stated.",
        "Ride: two masses on a spring, a damper and a tyre, one wheel; the spectrum of the vertical force through the checked section.",
        "Stress: bending at the checked section, from that force, the lever arm, the section modulus and the stress concentration.",
        "Fatigue: rainflow damage from the moments of the stress spectrum (Dirlik 1985 unless stated otherwise), S-N curves on their "
            + "mean with scatter, Miner's rule with an uncertain sum at failure. The life is that sum over the damage a km.",
        "Uncertainty: every uncertain input is a distribution; the chain above is evaluated for many samples of all of them together.",
    ];

    /// <summary>What the model leaves out.</summary>
    public static IReadOnlyList<string> Limits { get; } =
    [
        "The ride is linear: no damper asymmetry, friction, bump stops, lift-off, roll or steering loads.",
        "One wheel track is followed; moments of braking and cornering are left out.",
        "A crack counts as failure: its growth is not followed.",
        "Residual stress enters only through the S-N curve.",
        "Properties stay constant over life unless the scenario states otherwise.",
        "Intervals cover the error of sampling only. They cover neither wrong inputs nor the limits above.",
    ];

    /// <summary>How to read the words of this program.</summary>
    public static IReadOnlyList<string> Terms { get; } =
    [
        "Failure probability by a distance: the share of all vehicles that the scenario covers which have failed by then.",
        "B10 life: the distance by which a tenth of them has failed.",
        "beta: the reliability index, the failure probability on the scale of standard deviations; 1.28 is 10 %, 2.33 is 1 %, 3.09 is 0.1 %.",
        "varies: differs from vehicle to vehicle. unknown: one value, the same for all, that nobody knows.",
        "assumed: not stated in the scenario; the program's own value with its source.",
        "Base case: every input at its nominal value, the median unless stated.",
    ];
}
