namespace AxleRisk.App.Text;

/// <summary>What every answer carries with it.</summary>
internal static class Caution
{
    public const string Sentence =
        "Caution: a linear model that compares and ranks. It does not replace measured loads, inspection, local codes "
        + "or a licensed engineer's judgement; a broken axle can kill.";
}
