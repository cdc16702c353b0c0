using System.Text.Json.Nodes;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>A scenario with every table.</summary>
internal static class FullScenario
{
    public const string Text = """
        title = "Everything"
        required_km = 50000
        currency = "EUR"
        author = "nobody"

        [vehicle]
        sprung_kg = { distribution = "lognormal", median = 600, sd_ln = 0.10 }
        payload_kg = { distribution = "choice", values = [100, 300], weights = [0.4, 0.6] }
        unsprung_kg = 90
        spring_n_per_mm = 45
        damper_n_s_per_mm = { distribution = "normal", mean = 4, sd = 0.4, knowledge = "unknown", nominal = 4.2 }
        tyre_n_per_mm = 300
        bump_clearance_mm = 90
        bump_stop_n_per_mm = 200
        damper_wear_per_100000_km = 0.2

        [axle]
        lever_arm_mm = 240
        outside_diameter_mm = 95
        wall_mm = { distribution = "normal", quantiles = [[0.05, 5.5], [0.95, 6.5]], min = 5, max = 7 }
        yield_mpa = 400

        [bearing]
        kind = "roller"
        dynamic_rating_kn = 60
        spread_mm = 40

        [modes]
        off = ["bearing"]

        [detail]
        catalogue = "DNV-RP-C203"
        category = { distribution = "choice", values = ["E", "F"], weights = [0.7, 0.3], knowledge = "unknown" }
        environment = { distribution = "choice", values = ["air", "free corrosion"], weights = [0.8, 0.2], knowledge = "unknown" }

        [[sections]]
        name = "seat"
        lever_arm_mm = 300
        outside_diameter_mm = 100
        wall_mm = 7
        stress_concentration = 1.2
        stress_factor = 1.1
        life_scatter = 0.9
        catalogue = "DNV-RP-C203"
        category = "F"
        environment = "air"

        [use]
        speed_factor = 1.05
        mix_concentration = 100
        mix_knowledge = "unknown"

        [[use.legs]]
        name = "road"
        share = 0.75
        roughness_1e_6_m3 = 16
        speed_km_per_h = 80

        [[use.legs]]
        name = "gravel"
        share = 0.25
        road_class = "C"
        speed_km_per_h = { distribution = "uniform", low = 30, high = 60 }
        corrugated_share = 0.2
        corrugation_wavelength_m = 0.7
        damage_ratio = 1.5

        [[use.legs.events]]
        name = "pothole"
        per_km = 0.5
        wheel_load_range = 2.2

        [[use.legs.events]]
        name = "corner"
        per_km = 3
        moment_knm = 0.8

        [fatigue]
        counting = "narrow-band"
        miner_sum = 1

        [[correlations]]
        between = ["vehicle.sprung_kg", "legs.gravel.speed_km_per_h"]
        spearman = -0.3

        [evidence]
        survived_km = 40000
        would_have_passed_km = 90000

        [[evidence.measured]]
        factor = "axle.wall_mm"
        value = 5.7
        sd = 0.1

        [[evidence.known]]
        factor = "detail.category"
        state = "F"

        [[evidence.looks]]
        method = "dye penetrant"
        at_km = 30000
        found = "crack"
        depth_mm = 1.5
        sd_mm = 4

        [[explanations]]
        name = "thin wall"
        prior = 0.2
        when = { "axle.wall_mm" = { below = 5.8 }, "legs.gravel.share" = { above = 0.3 }, "vehicle.payload_kg" = [100] }
        instead = { "axle.wall_mm" = 6.5 }

        [[remedies]]
        name = "thicker"
        cost = 85
        change = { "axle.wall_mm" = 8, "detail.category" = "E", "sections.seat.wall_mm" = { times = 1.1 }, sections.seat.category = "E" }

        [[remedies]]
        name = "slower"
        change = { legs.gravel.speed_km_per_h = { times = 0.8 }, "legs.gravel.events.pothole.per_km" = 0.2 }

        [[history]]
        until_km = 20000
        change = { "vehicle.tyre_n_per_mm" = { times = 0.9 }, "detail.environment" = "air" }

        [[history]]
        change = { "vehicle.payload_kg" = 200 }
        shares = [0.5, 0.5]
        renewed = ["dampers"]

        [trip]
        already_driven_km = 41000
        target_risk = 0.02

        [trip.card]
        speed_step_km_per_h = 10
        fastest_km_per_h = 70
        payloads_kg = [200]
        notes = "look twice"

        [[trip.legs]]
        name = "plain"
        km = 900
        like = "gravel"

        [[trip.legs]]
        name = "pass"
        km = { distribution = "uniform", low = 150, high = 220 }
        road_class = "E"
        speed_km_per_h = 18
        damage_ratio = 0.9
        payload_kg = 300

        [[trip.legs.events]]
        name = "ford"
        per_km = 0.1
        wheel_load_range = 2

        [[trip.remedies]]
        name = "slow on the pass"
        change = { "trip.pass.speed_km_per_h" = 10 }

        [fleet]
        vehicles = 1500
        distance_km_per_year = { distribution = "lognormal", median = 25000, cov = 0.4 }
        warranty_months = 24
        warranty_km = 80000
        sales_shares = [0.2, 0.5, 0.3]
        cost_per_claim = 2600
        target_claim_rate = 0.02
        target_fraction = 0.10
        target_km = 120000

        [decision]
        failure_cost = { distribution = "lognormal", median = 9000, cov = 0.3, knowledge = "unknown" }
        over = "distance"
        vehicles = 40
        distance_km = 60000

        [[measurements]]
        name = "gauge"
        factor = "vehicle.damper_n_s_per_mm"
        sd = 0.2
        number = 4
        cost = 300

        [crack]
        initial_depth_mm = 0.2
        growth_exponent = 3.1
        source = "a test"

        [[inspections]]
        name = "dye penetrant"
        a50_mm = 1.5
        a90_mm = 4
        false_calls = 0.02
        cost = 80
        at_km = [20000, 35000]

        [inspection_plan]
        target = 0.01
        repair_cost = 400
        false_call_cost = 60
        failure_cost = 9000
        repaired_life = 0.8

        [[decision.packages]]
        name = "both"
        remedies = "thicker + slower"
        cost = 90

        """;

    /// <summary>The same as JSON, to be changed.</summary>
    public static JsonObject Json() => Toml.ToJson(Text + Data).AsObject();

    /// <summary>A data file that it names; what reads it must have it.</summary>
    public static string DataFile(string name) => name switch
    {
        "returns.csv" => "survived_km\n0\n",
        "gauges.csv" => "leg,damage_per_km,sd_ln\ngravel,1e-6,0.3\n",
        _ => throw new IOException("there is none"),
    };

    /// <summary>The same for changes in one table: without the tables that speak of the inputs in it.</summary>
    public static JsonObject Around(string path)
    {
        JsonObject json = Json();
        if (path == "detail.curve")
        {
            json["detail"] = Toml.ToJson(OwnCurve)["detail"]!.DeepClone();
        }

        if (path == "sections.curve")
        {
            JsonObject section = Toml.ToJson(OwnCurve.Replace("detail", "sections", StringComparison.Ordinal))["sections"]!.AsObject();
            foreach ((string key, string value) in new[] { ("name", "\"seat\""), ("lever_arm_mm", "300"), ("outside_diameter_mm", "100"), ("wall_mm", "7") })
            {
                section[key] = JsonNode.Parse(value);
            }

            json["sections"] = new JsonArray(section.DeepClone());
            Array.ForEach(OfInputs, t => json.Remove(t));
            json["trip"]!.AsObject().Remove("remedies");
        }

        if (json.ContainsKey(path.Split('.')[0]) && !Array.Exists(OfInputs, path.StartsWith))
        {
            Array.ForEach(OfInputs, t => json.Remove(t));
            json["trip"]!.AsObject().Remove("remedies");
        }

        return json;
    }

    private const string Data = """

        [field]
        file = "returns.csv"
        until_km = 90000

        [gauges]
        file = "gauges.csv"

        [learned]
        data = ["of a test"]
        choices = ["detail.category"]
        factors = ["vehicle.damper_n_s_per_mm"]

        [[learned.states]]
        of = ["E"]
        probability = 0.6
        mean = [0.2]
        covariance = [0.5]

        [[learned.states]]
        of = ["F"]
        probability = 0.4
        mean = [-0.1]
        covariance = [0.7]
        """;

    private const string OwnCurve = """
        [detail]
        catalogue = "own"

        [detail.curve]
        slopes = [3, 5]
        log10_a = [12.0, 15.4]
        stated_as = "mean"
        sd_log10_n = 0.2
        source = "a test"
        """;

    private static readonly string[] OfInputs = ["correlations", "evidence", "explanations", "history", "remedies", "trip.remedies"];
}
