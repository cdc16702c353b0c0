using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The table of the fleet.</summary>
public static class FleetFormat
{
    /// <summary>The fleet.</summary>
    public static TableFormat Fleet { get; } = new(
        "fleet", "The vehicles of one model that are sold under one warranty.",
        new("vehicles", "vehicles", "", new KeyKind.Whole(1, Core.Scenarios.Fleet.MostVehicles), "the number of vehicles")
        { IsRequired = true, Start = "1000" },
        new("distance_km_per_year", "distance a year", "km", new KeyKind.Uncertain(Domain.Positive, OnlyVaries: true),
            "what one vehicle drives in a year; it differs between owners and is independent of all other factors")
        { IsRequired = true, Start = "20000" },
        new("warranty_months", "warranty, age", "months", new KeyKind.Whole(1, Core.Scenarios.Fleet.MostMonths),
            "the age limit of the warranty, from the sale of the vehicle")
        { IsRequired = true, Start = "24" },
        new("warranty_km", "warranty, distance", "km", new KeyKind.Number(Domain.Positive),
            "the distance limit of the warranty; whichever limit is reached first ends it")
        { IsRequired = true, Start = "80000" },
        new("sales_months", "months of sale", "months", new KeyKind.Whole(1, Core.Scenarios.Fleet.MostMonths),
            "the sales are spread evenly over so many months")
        { Otherwise = "1" },
        new("sales_shares", "shares sold by month", "",
            new KeyKind.Numbers(
                Domain.Fraction, 1, Core.Scenarios.Fleet.MostMonths,
                $"up to {Core.Scenarios.Fleet.MostMonths} numbers from 0 to 1 that add up to 1"),
            "in place of `sales_months`: the share sold in each month from the first sale on"),
        new("cost_per_claim", "cost of a claim", "", new KeyKind.Uncertain(Domain.NonNegative, OnlyVaries: true),
            "what one claim costs, in your own unit or in `currency`"),
        new("target_claim_rate", "target claim rate", "", new KeyKind.Number(Domain.OpenFraction),
            "the share of the vehicles that may make a claim"),
        new("target_fraction", "target share failed", "", new KeyKind.Number(Domain.OpenFraction),
            "the share that may have failed by `target_km`: 0.1 for a B10 life")
        { Needs = "target_km" },
        new("target_km", "target distance", "km", new KeyKind.Number(Domain.Positive),
            "the distance by which `target_fraction` may have failed")
        { Needs = "target_fraction" })
    {
        Choices = [new(false, "sales_months", "sales_shares")],
    };
}
