using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// What becomes of one vehicle between points of its way, some of which are looks for the crack, given all but the scatter of its life.
/// That is integrated over, exactly but for quadrature, with the chance of every look to find. A found crack is repaired: fatigue begins
/// anew, with scatter of its own, and so on. A thread's buffer.
/// </summary>
internal sealed class InspectionChain
{
    private readonly int points;
    private readonly LifeNodes nodes = new();
    private readonly double[] lnUsed;
    private readonly double[] renewed;
    private readonly double[] alive;
    private readonly double[] fatigueFails;
    private readonly DetectionTable?[] tables;
    private CrackDepth? tabled;

    /// <summary>A chain of points.</summary>
    public InspectionChain(int points)
    {
        this.points = points;
        (lnUsed, renewed, alive, fatigueFails) = (new double[points], new double[points], new double[points], new double[points]);
        tables = new DetectionTable?[points];
        Used = new double[points];
        OthersSurvive = new double[points];
        Looks = new DetectionCurve?[points];
        FromScratch = new double[points + 1];
        (Fails, Found, Missed, Unfound) = (new double[points], new double[points], new double[points], new double[points]);
        (CleanFails, Clean) = (new double[points], new double[points]);
    }

    /// <summary>What fatigue has used up by each point, rising; to be filled.</summary>
    public double[] Used { get; }

    /// <summary>The probability that the modes beside fatigue are survived to each point; to be filled.</summary>
    public double[] OthersSurvive { get; }

    /// <summary>The looks at the points; null where there is none. To be filled, once.</summary>
    public DetectionCurve?[] Looks { get; }

    /// <summary>Where the tables of the looks' chances to find come from.</summary>
    public Func<DetectionCurve, CrackDepth, DetectionTable> TableOf { get; init; } = (look, depth) => new DetectionTable(look, depth);

    /// <summary>What was seen of the vehicle before the first point, taken over; null where nothing was. To be filled.</summary>
    public LookedChance? Seen { get; set; }

    /// <summary>What fatigue had used up where the way begins, of a vehicle that was whole there; 0 for a new one. To be filled.</summary>
    public double WholeUsed { get; set; }

    /// <summary>The probability that the modes beside fatigue are survived to there; to be filled.</summary>
    public double OthersSurviveBefore { get; set; } = 1;

    /// <summary>The probability of the vehicle itself, which all others have as a factor; to be filled.</summary>
    public double Weight { get; set; } = 1;

    /// <summary>The probability that it is whole where the way begins, and was seen so.</summary>
    public double Whole { get; private set; }

    /// <summary>
    /// The mean of ln of what fatigue can use up, of a new vehicle first and then of one repaired at each point; to be filled.
    /// </summary>
    public double[] FromScratch { get; }

    /// <summary>The probability that the vehicle, whole until then, fails on the way to each point from the one before.</summary>
    public double[] Fails { get; }

    /// <summary>The probability that it comes whole to each point and the look finds the crack.</summary>
    public double[] Found { get; }

    /// <summary>That it comes whole to each point and the look does not find the crack though it is at least as deep as a50.</summary>
    public double[] Missed { get; }

    /// <summary>That it comes whole to each point and the look finds nothing.</summary>
    public double[] Unfound { get; }

    /// <summary>That no look before has found a crack and it fails on the way to each point.</summary>
    public double[] CleanFails { get; }

    /// <summary>That it is whole at each point and no look up to and with that there has found a crack.</summary>
    public double[] Clean { get; }

    /// <summary>Follows the vehicle.</summary>
    /// <param name="sigma">The standard deviation of ln of what fatigue can use up; 0 where <see cref="FromScratch"/> is all of it.</param>
    /// <param name="depth">The depth of the crack over the fraction of that.</param>
    public void Fill(double sigma, CrackDepth depth)
    {
        foreach (double[] sum in (ReadOnlySpan<double[]>)[renewed, alive, fatigueFails, Missed, CleanFails, Clean])
        {
            Array.Clear(sum);
        }

        FillTables(depth);
        double begin = Begin(sigma, depth);
        for (int start = 0; start < points; start++)
        {
            if (renewed[start] > 0)
            {
                From(start, renewed[start], sigma, depth);
            }
        }

        Whole = begin * OthersSurviveBefore;
        (double othersBefore, double aliveBefore) = (OthersSurviveBefore, begin);
        for (int k = 0; k < points; k++)
        {
            double others = OthersSurvive[k];
            Fails[k] = (aliveBefore * (othersBefore - others)) + (fatigueFails[k] * others);
            Found[k] = renewed[k] * others;
            Missed[k] *= others;
            Unfound[k] = alive[k] * others;
            double clean = k == 0 ? begin : Clean[k - 1]; // of fatigue alone until the last loop
            CleanFails[k] = (clean * (othersBefore - others)) + (CleanFails[k] * others);
            (othersBefore, aliveBefore) = (others, alive[k] + renewed[k]);
        }

        for (int k = 0; k < points; k++)
        {
            Clean[k] *= OthersSurvive[k];
        }
    }

    // The vehicle as it was seen, up to its first found crack; gives the probability that fatigue is survived to where the way begins.
    private double Begin(double sigma, CrackDepth depth)
    {
        double mean = FromScratch[0];
        if (!(WholeUsed > 0) && Seen is null)
        {
            From(-1, Weight, sigma, depth);
            return Weight;
        }

        Prepare(-1, 0, mean, sigma, depth);
        if (!(sigma > 0))
        {
            double weight = Math.Log(WholeUsed) > mean ? 0 : Weight;
            Follow(-1, 0, weight, mean);
            return weight;
        }

        Seen?.Cut(nodes);
        nodes.Fill((Math.Log(WholeUsed) - mean) / sigma, double.PositiveInfinity);
        Seen?.Weigh(nodes, mean, sigma);
        double sum = 0;
        for (int i = 0; i < nodes.Count; i++)
        {
            double weight = Weight * nodes.Weights[i];
            Follow(-1, 0, weight, mean + (sigma * nodes.Scores[i]));
            sum += weight;
        }

        return sum;
    }

    private void Prepare(int start, double before, double mean, double sigma, CrackDepth depth)
    {
        nodes.Clear();
        for (int k = start + 1; k < points; k++)
        {
            lnUsed[k] = Math.Log(Used[k] - before);
            if (sigma > 0)
            {
                Cut(k, mean, sigma, depth);
            }
        }
    }

    // A vehicle that is new, or has been repaired at a point, up to its first found crack.
    private void From(int start, double weight, double sigma, CrackDepth depth)
    {
        if (start + 1 == points)
        {
            return;
        }

        double mean = FromScratch[start + 1], before = start < 0 ? 0 : Used[start];
        Prepare(start, before, mean, sigma, depth);
        if (!(sigma > 0))
        {
            Follow(start, before, weight, mean);
            return;
        }

        // Below the first point nothing depends on a look.
        double first = (lnUsed[start + 1] - mean) / sigma;
        Fail(start, start + 1, weight * StandardNormal.Cumulative(first));
        nodes.Fill(first, double.PositiveInfinity);
        for (int i = 0; i < nodes.Count; i++)
        {
            Follow(start, before, weight * nodes.Weights[i], mean + (sigma * nodes.Scores[i]));
        }
    }

    private void Follow(int start, double before, double weight, double lnLimit)
    {
        (double left, double perUnit) = (weight, Math.Exp(-lnLimit));
        for (int k = start + 1; k < points; k++)
        {
            if (lnUsed[k] > lnLimit)
            {
                Fail(start, k, left);
                return;
            }

            if (tables[k] is { } look)
            {
                double fraction = (Used[k] - before) * perUnit, found = left * look.Of(fraction);
                renewed[k] += found;
                left -= found;
                Missed[k] += fraction >= look.Fraction50 ? left : 0;
            }

            alive[k] += left;
            Clean[k] += start < 0 ? left : 0;
        }
    }

    private void Fail(int start, int point, double probability)
    {
        fatigueFails[point] += probability;
        CleanFails[point] += start < 0 ? probability : 0;
    }

    // Where the vehicle fails by a point, and where a look there goes from blind to sure.
    private void Cut(int point, double mean, double sigma, CrackDepth depth)
    {
        const double wide = 3; // standard deviations of the detection curve
        const double steep = 0.4; // above, the curve is smooth within a panel, but for what counts as missed
        double score = (lnUsed[point] - mean) / sigma;
        nodes.Cut(score);
        if (Looks[point] is not { } look)
        {
            return;
        }

        int sides = look.Sigma < steep ? 1 : 0;
        for (int side = -sides; side <= sides; side++)
        {
            double fraction = depth.FractionAt(look.A50Mm * Math.Exp(side * wide * look.Sigma));
            if (fraction is > 0 and < 1)
            {
                nodes.Cut(score - (Math.Log(fraction) / sigma));
            }
        }
    }

    private void FillTables(CrackDepth depth)
    {
        for (int k = 0; tabled != depth && k < points; k++)
        {
            int same = Array.IndexOf(Looks, Looks[k]);
            tables[k] = Looks[k] is not { } look ? null : same < k ? tables[same] : TableOf(look, depth);
        }

        tabled = depth;
    }
}
