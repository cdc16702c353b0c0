using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>The crack of a scenario's vehicles, row by row.</summary>
internal sealed class CrackModel
{
    private readonly CrackDepth? certain;
    private readonly (int Column, double Constant) initial;
    private readonly (int Column, double Constant) exponent;
    private readonly (int Column, double Constant) wall;
    private readonly (int Column, double Constant) loss;

    /// <summary>The crack of a scenario that states one.</summary>
    public CrackModel(LifeModel model)
    {
        Scenario scenario = model.Scenario;
        (int, double) SourceOf(Quantity quantity) => scenario.Find(quantity) switch
        {
            { Value: Value.Uncertain } input => (model.Factors.ColumnNames.IndexOf(input.Name), input.Value.Nominal),
            { } input => (-1, input.Value.Nominal),
            null => (-1, quantity.Default?.Nominal ?? 0),
        };
        (initial, exponent) = (SourceOf(Quantities.InitialDepth), SourceOf(Quantities.ParisExponent));
        (wall, loss) = (SourceOf(Quantities.Wall), SourceOf(Quantities.CorrosionLoss));
        if (scenario.Crack?.Own is { } own)
        {
            certain = new CrackDepth(own);
        }

        Nominal = certain ?? new CrackDepth(initial.Constant, wall.Constant - loss.Constant, exponent.Constant);
    }

    /// <summary>The distances at which depths are told, km: quarters of the required one.</summary>
    public static IEnumerable<double> TellAtKm(Scenario scenario) => [.. Enumerable.Range(1, 4).Select(i => i / 4.0 * scenario.RequiredKm)];

    /// <summary>That of the nominal values.</summary>
    public CrackDepth Nominal { get; }

    /// <summary>Depth over the fraction of life of one row of factor values.</summary>
    public CrackDepth Of(double[][] values, int row) => certain ?? new CrackDepth(
        At(initial, values, row), Math.Max(double.Epsilon, At(wall, values, row) - At(loss, values, row)), At(exponent, values, row));

    private static double At((int Column, double Constant) source, double[][] values, int row) =>
        source.Column < 0 ? source.Constant : values[source.Column][row];
}
