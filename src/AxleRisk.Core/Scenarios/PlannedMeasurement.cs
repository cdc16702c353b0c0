namespace AxleRisk.Core.Scenarios;

/// <summary>A measurement that could still be made, of a factor that is not known.</summary>
/// <param name="Name">Its name, unique in the scenario.</param>
/// <param name="Factor">The name of the factor.</param>
/// <param name="StandardDeviation">The standard deviation of the error of one reading, in the factor's unit, above 0.</param>
/// <param name="Number">The number of independent readings, at least 1; their mean is what is known then.</param>
/// <param name="Cost">What all of them cost, in the user's own unit.</param>
public sealed record PlannedMeasurement(string Name, string Factor, double StandardDeviation, int Number, double Cost)
{
    /// <summary>The standard deviation of the error of the mean.</summary>
    public double MeanDeviation => StandardDeviation / Math.Sqrt(Number);
}
