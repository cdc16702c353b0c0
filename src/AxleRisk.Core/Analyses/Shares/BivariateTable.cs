using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// Phi2(g, h; rho) of one correlation at many points: cubic Hermite interpolation in both directions with the exact slopes
/// phi(g) Phi((h - rho g) / sqrt(1 - rho^2)), its mirror image and the density. The error stays below 1e-6 up to rho = 0.7 and
/// below 1e-5 up to 0.9, and below a hundredth of the value down to g = h = -6. Where rho exceeds <see cref="GreatestInGrid"/>
/// the ridge at g = h is too sharp for the grid: few points are integrated, many interpolated in h alone, within 1e-4.
/// </summary>
/// <param name="rho">The correlation, above 0 and below 1.</param>
internal sealed class BivariateTable(double rho)
{
    /// <summary>The greatest correlation that the grid serves.</summary>
    public const double GreatestInGrid = 0.9;

    // Beyond them the probability is 0, or does not change, to all digits that matter beside sampling.
    private const double Least = -12;
    private const double Most = 9;
    private const int PerUnit = 8;
    private const int Nodes = (int)((Most - Least) * PerUnit) + 1;

    private readonly double root = Math.Sqrt(1 - (rho * rho));
    private readonly Lazy<Node[]>? grid = rho <= GreatestInGrid ? new(() => Grid(rho)) : null;

    /// <summary>The probabilities of one g with many h.</summary>
    public void Fill(double g, ReadOnlySpan<double> h, Span<double> p)
    {
        int first = Nodes, last = 0;
        foreach (double x in h)
        {
            int node = Cubic.Place(x, Least, PerUnit, Nodes).Node;
            (first, last) = (Math.Min(first, node), Math.Max(last, node + 1));
        }

        Func<int, (double Value, double Slope)> along = Along(g);
        if (last - first < h.Length)
        {
            var nodes = new (double Value, double Slope)[last - first + 1];
            for (int i = 0; i < nodes.Length; i++)
            {
                nodes[i] = along(first + i);
            }

            for (int i = 0; i < h.Length; i++)
            {
                (int node, double t) = Cubic.Place(h[i], Least, PerUnit, Nodes);
                p[i] = Cubic.At(t, nodes[node - first], nodes[node - first + 1]);
            }
        }
        else
        {
            for (int i = 0; i < h.Length; i++)
            {
                (int node, double t) = Cubic.Place(h[i], Least, PerUnit, Nodes);
                p[i] = grid is null ? BivariateNormal.Cumulative(g, h[i], rho) : Cubic.At(t, along(node), along(node + 1));
            }
        }
    }

    /// <summary>The value and the slope over h, times the step, at this g and the nodes of h.</summary>
    private Func<int, (double Value, double Slope)> Along(double g)
    {
        if (grid is null)
        {
            return node =>
            {
                double h = Least + (node / (double)PerUnit);
                return (BivariateNormal.Cumulative(g, h, rho),
                    StandardNormal.Density(h) * StandardNormal.Cumulative((g - (rho * h)) / root) / PerUnit);
            };
        }

        Node[] all = grid.Value;
        (int row, double t) = Cubic.Place(g, Least, PerUnit, Nodes);
        return node =>
        {
            ref readonly Node a = ref all[(row * Nodes) + node];
            ref readonly Node b = ref all[((row + 1) * Nodes) + node];
            return (Cubic.At(t, (a.Value, a.OverG), (b.Value, b.OverG)), Cubic.At(t, (a.OverH, a.OverBoth), (b.OverH, b.OverBoth)));
        };
    }

    private static Node[] Grid(double rho)
    {
        var nodes = new Node[Nodes * Nodes];
        double root = Math.Sqrt(1 - (rho * rho)), step = 1.0 / PerUnit;
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double g = Least + (i * step), h = Least + (j * step), between = (h - (rho * g)) / root;
                var node = new Node(
                    BivariateNormal.Cumulative(g, h, rho),
                    step * StandardNormal.Density(g) * StandardNormal.Cumulative(between),
                    step * StandardNormal.Density(h) * StandardNormal.Cumulative((g - (rho * h)) / root),
                    step * step * StandardNormal.Density(g) * StandardNormal.Density(between) / root);
                nodes[(i * Nodes) + j] = node;
                nodes[(j * Nodes) + i] = node with { OverG = node.OverH, OverH = node.OverG };
            }
        }

        return nodes;
    }

    /// <summary>A point of the grid: the value and its slopes times the step.</summary>
    private readonly record struct Node(double Value, double OverG, double OverH, double OverBoth);
}
