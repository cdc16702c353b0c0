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

    /// <summary>The cycles of a history: its ends are turning points; of equal neighbours one counts.</summary>
    public static List<(double Range, double Mean, double Count)> Of(params double[] history)
    {
        var rainflow = new Rainflow<CycleList>(new CycleList());
        double[] points = [.. history.Where((x, i) => i == 0 || x != history[i - 1])];
        for (int i = 0; i < points.Length; i++)
        {
            bool isEnd = i == 0 || i == points.Length - 1;
            if (isEnd || (points[i] - points[i - 1]) * (points[i + 1] - points[i]) < 0)
            {
                rainflow.AddTurningPoint(points[i]);
            }
        }

        rainflow.End();
        return rainflow.Sink.Cycles;
    }
}
