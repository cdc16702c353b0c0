using System.Collections.Immutable;

namespace AxleRisk.Core.Distributions;

/// <summary>A choice among several numbers, each with a weight.</summary>
public sealed class NumberChoice : Distribution
{
    private readonly double[] cumulative;

    /// <summary>Creates a choice.</summary>
    /// <param name="values">At least two different numbers, in any order.</param>
    /// <param name="weights">As many weights, each above 0; they are divided by their sum.</param>
    /// <exception cref="DistributionException">A number is stated twice or is not finite, a weight is not above 0, or the lists
    /// differ in length.</exception>
    public NumberChoice(IReadOnlyList<double> values, IReadOnlyList<double> weights)
    {
        if (values.Count != weights.Count)
        {
            throw new DistributionException($"there are {values.Count} values but {weights.Count} weights: each value needs one",
                "weights");
        }

        if (values.Count < 2)
        {
            throw new DistributionException("a choice needs at least two values", "values");
        }

        double total = weights.Sum(w => Check.Positive(w, "weights"));
        (double Value, double Weight)[] pairs =
            [.. values.Zip(weights, (v, w) => (Check.Finite(v, "values"), w / Check.Positive(total, "weights")))
                .OrderBy(pair => pair.Item1)];
        Values = [.. pairs.Select(pair => pair.Value)];
        Weights = [.. pairs.Select(pair => pair.Weight)];
        cumulative = new double[pairs.Length];
        double sum = 0;
        for (int i = 0; i < pairs.Length; i++)
        {
            if (i > 0 && pairs[i].Value == pairs[i - 1].Value)
            {
                throw new DistributionException($"the value {pairs[i].Value:G6} is stated twice", "values");
            }

            sum += pairs[i].Weight;
            cumulative[i] = Math.Min(sum, 1);
        }

        cumulative[^1] = 1;
        Mean = pairs.Sum(pair => pair.Weight * pair.Value);
        StandardDeviation = Math.Sqrt(pairs.Sum(pair => pair.Weight * (pair.Value - Mean) * (pair.Value - Mean)));
    }

    /// <summary>The numbers, ascending.</summary>
    public ImmutableArray<double> Values { get; }

    /// <summary>The probability of each number.</summary>
    public ImmutableArray<double> Weights { get; }

    /// <inheritdoc/>
    public override string Family => "choice";

    /// <summary>The numbers and their probabilities in pairs: <c>value_1</c>, <c>weight_1</c>, <c>value_2</c> and so on.</summary>
    public override ImmutableArray<Parameter> Parameters =>
        [.. Values.SelectMany((v, i) => new Parameter[] { new($"value_{i + 1}", v), new($"weight_{i + 1}", Weights[i]) })];

    /// <inheritdoc/>
    public override double Minimum => Values[0];

    /// <inheritdoc/>
    public override double Maximum => Values[^1];

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double StandardDeviation { get; }

    /// <inheritdoc/>
    public override bool IsContinuous => false;

    /// <inheritdoc/>
    public override double Density(double x) => Values.BinarySearch(x) is int i and >= 0 ? Weights[i] : 0;

    /// <inheritdoc/>
    public override double Cumulative(double x)
    {
        int i = Values.BinarySearch(x);
        int notAbove = i >= 0 ? i + 1 : ~i;
        return notAbove == 0 ? 0 : cumulative[notAbove - 1];
    }

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        int i = Array.BinarySearch(cumulative, p);
        return Values[Math.Min(i >= 0 ? i : ~i, cumulative.Length - 1)];
    }
}
