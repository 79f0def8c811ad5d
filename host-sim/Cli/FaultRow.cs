using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Plant.Faults;
using LubeController.Scripts.Steps;

namespace LubeController.Cli;

/// <summary>One fault of the registry as it is listed.</summary>
/// <param name="Fault">Its entry.</param>
/// <param name="Parts">The parts of a plant that can have it; empty where no plant is asked about, or it needs no name.</param>
internal sealed record FaultRow(Fault Fault, IReadOnlyList<string> Parts)
{
    /// <summary>How it fails, in one word.</summary>
    public string Manner => Fault.Manner.ToString().ToLowerInvariant();

    /// <summary>What a script writes under <c>part</c>.</summary>
    public string PartText => Fault.Part.Words;

    /// <summary>Whether healing leaves anything.</summary>
    public string Heals => Fault.Healing == FaultHealing.FullyOnRepair ? "fully on repair" : "leaves traces";

    /// <summary>A parameter in words: meaning, range, what is taken where nothing is written, from where it may grow.</summary>
    public static string Describe(FaultParameter parameter)
    {
        string grows = parameter.Harmless is { } harmless ? $"; may grow from {Text(parameter, harmless)}" : "";
        return $"{parameter.Meaning}, {Text(parameter, parameter.Minimum)} to {Text(parameter, parameter.Maximum)}, {Text(parameter, parameter.Default)} if not written{grows}";
    }

    /// <summary>A value of a parameter in its usual unit.</summary>
    public static string Text(FaultParameter parameter, double si)
    {
        UnitFamily family = BenchFaults.FamilyOf(parameter);
        return new Quantity(Usual(parameter, si), family.UsualUnit, family).ToString();
    }

    /// <summary>The number of a value of a parameter in its usual unit, to twelve digits.</summary>
    public static double Usual(FaultParameter parameter, double si)
    {
        UnitFamily family = BenchFaults.FamilyOf(parameter);
        return double.Parse(family.FromSi(si, family.UsualUnit).ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>Names of the parts, joined.</summary>
    public string PartList => string.Join(", ", Parts.Where(part => part.Length > 0));
}
