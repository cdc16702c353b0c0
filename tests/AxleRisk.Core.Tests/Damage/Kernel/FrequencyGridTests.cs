using AxleRisk.Core.Damage.Spectra;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class FrequencyGridTests
{
    [Fact]
    public void The_grid_runs_evenly_in_the_logarithm_from_a_quarter_to_50_hz()
    {
        Assert.Equal(128, FrequencyGrid.Hz.Length);
        Assert.Equal(0.25, FrequencyGrid.Hz[0]);
        Assert.Equal(50, FrequencyGrid.Hz[^1]);
        for (int i = 1; i < FrequencyGrid.Points; i++)
        {
            Near.Relative(Math.Pow(200, 1.0 / 127), FrequencyGrid.Hz[i] / FrequencyGrid.Hz[i - 1], 1e-13);
        }
    }

    [Fact]
    public void The_weights_integrate_one_over_f_exactly()
    {
        double sum = 0;
        for (int i = 0; i < FrequencyGrid.Points; i++)
        {
            sum += FrequencyGrid.Weights[i] / FrequencyGrid.Hz[i];
        }

        Near.Relative(Math.Log(200), sum, 1e-13);
    }
}
