using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// The lives of a set of vehicles given what is unknown: failure probability, survival and density at nodes, and between nodes by
/// the cubic through ln of the cumulated hazard and its slope over ln distance, where lives are nearly straight.
/// </summary>
internal sealed class LifeCurve
{
    private const double Least = 1e-300;

    private readonly double[] nodes;
    private readonly double[] lnNodes;
    private readonly double[] lnHazard;
    private readonly double[] slope;
    private bool isPrepared;

    /// <summary>A curve with nodes.</summary>
    /// <param name="nodes">Distances, km, above 0, ascending, each once.</param>
    public LifeCurve(double[] nodes)
    {
        this.nodes = nodes;
        lnNodes = [.. nodes.Select(km => Math.Log(km))];
        Failed = new double[nodes.Length];
        Whole = new double[nodes.Length];
        Density = new double[nodes.Length];
        lnHazard = new double[nodes.Length];
        slope = new double[nodes.Length];
    }

    /// <summary>The nodes, km.</summary>
    public ReadOnlySpan<double> Nodes => nodes;

    /// <summary>The failure probability by each node.</summary>
    public double[] Failed { get; }

    /// <summary>The survival at each node.</summary>
    public double[] Whole { get; }

    /// <summary>The density at each node, per km.</summary>
    public double[] Density { get; }

    /// <summary>Forgets all values, for others.</summary>
    public void Clear()
    {
        Array.Clear(Failed);
        Array.Clear(Whole);
        Array.Clear(Density);
        isPrepared = false;
    }

    /// <summary>Failure probability, survival and density at a distance within the nodes' range; below it nothing has failed.</summary>
    public (double Failed, double Whole, double Density) At(double km)
    {
        if (!(km > 0))
        {
            return (0, 1, 0);
        }

        int at = Array.BinarySearch(nodes, km);
        if (at >= 0)
        {
            return (Failed[at], Math.Max(Least, Whole[at]), Density[at]);
        }

        if (nodes.Length < 2)
        {
            return (double.NaN, double.NaN, double.NaN);
        }

        Prepare();
        int right = Math.Clamp(~at, 1, nodes.Length - 1), left = right - 1;
        double h = lnNodes[right] - lnNodes[left];
        double t = (Math.Log(km) - lnNodes[left]) / h;
        double change = lnHazard[right] - lnHazard[left];
        double a = (slope[left] * h) - change, b = change - (slope[right] * h);
        double y = lnHazard[left] + (t * change) + (t * (1 - t) * ((a * (1 - t)) + (b * t)));
        double dy = (change + ((1 - (2 * t)) * ((a * (1 - t)) + (b * t))) + (t * (1 - t) * (b - a))) / h;
        double hazard = Math.Exp(y), whole = Math.Exp(-hazard);
        return (-LogExp.ExpM1(-hazard), Math.Max(Least, whole), Math.Max(0, whole * hazard * dy / km));
    }

    /// <summary>The cumulated hazard at a distance.</summary>
    public double HazardAt(double km)
    {
        (double failed, double whole, _) = At(km);
        return failed < 0.5 ? -LogExp.LogP1(-failed) : -Math.Log(whole);
    }

    private void Prepare()
    {
        if (isPrepared)
        {
            return;
        }

        for (int k = 0; k < nodes.Length; k++)
        {
            double hazard = Math.Max(Least, Failed[k] < 0.5 ? -LogExp.LogP1(-Failed[k]) : -Math.Log(Math.Max(Least, Whole[k])));
            lnHazard[k] = Math.Log(hazard);
            slope[k] = Whole[k] > Least && hazard > Least ? Density[k] * nodes[k] / (Whole[k] * hazard) : 0;
        }

        isPrepared = true;
    }
}
