using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Keeps counted cycles.</summary>
internal readonly struct CycleList : ICycleSink
{
    public CycleList()
    {
    }

    public List<(double Range, double Mean, double Count)> Cycles { get; } = [];

    public void Add(double range, double mean, double count) => Cycles.Add((range, mean, count));

    /// <summary>The cycles of a history.</summary>
    public static List<(double Range, double Mean, double Count)> Of(params double[] history)
    {
        var rainflow = new Rainflow<CycleList>(new CycleList());
        rainflow.AddSamples(history);
        rainflow.End();
        return rainflow.Sink.Cycles;
    }
}
