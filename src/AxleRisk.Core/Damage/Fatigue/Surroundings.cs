namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>What a weld lives in, by the words of a scenario file.</summary>
public static class Surroundings
{
    /// <summary>Air, or a coating that holds: what every catalogue's curves are of unless they say otherwise.</summary>
    public const string Air = "air";

    /// <summary>Seawater, with cathodic protection.</summary>
    public const string Protected = "seawater with protection";

    /// <summary>Seawater or salted wet roads on bare steel.</summary>
    public const string Corroding = "free corrosion";
}
