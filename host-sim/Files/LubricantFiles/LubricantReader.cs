using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant.Checking;
using LubeController.Plant.Lubricant;

namespace LubeController.Files.LubricantFiles;

/// <summary>Reads a lubricant file: an oil or a grease, each value with its source, judged by the plant's own check.</summary>
public sealed class LubricantReader
{
    private static readonly string[] Kinds = ["grease", "oil"];

    private readonly MapReader _file;
    private readonly ProblemList _problems;
    private readonly int _before;

    private LubricantReader(MapNode map, ProblemList problems)
    {
        _before = problems.Count;
        _file = new MapReader(map, FileKeys.Lubricant, problems);
        _problems = problems;
    }

    /// <summary>Reads a lubricant file, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the program may open it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static LubricantDescription? Read(string path, ProblemList problems) =>
        Fields(path, problems) is { } map ? new LubricantReader(map, problems).Lubricant() : null;

    /// <summary>
    /// Reads the lubricant of a plant: the file that it names, with single values replaced by those in the plant file, each
    /// together with its source.
    /// </summary>
    /// <param name="group">The plant's field <c>lubricant</c>.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static LubricantDescription? ReadInPlant(MapReader group, ProblemList problems)
    {
        if (!group.Has("file"))
            group.Missing("file", "write the path of a lubricant file, relative to this one, for instance '../lubricants/nlgi-1.lubricant.yaml'");
        if (group.Single("file") is not { } named)
            return null;
        string path = Inheritance.Resolve(named);
        if (!File.Exists(path))
        {
            problems.Add(named, $"the lubricant file is missing; looked for {Path.GetFullPath(path)}", "correct the path, which is relative to the file that names it");
            return null;
        }

        if (Fields(path, problems) is not { } map)
            return null;
        MapEntry[] own = group.Map.Entries.Where(entry => LubricantKeys.InPlant.Has(entry.Key) && entry.Key != "file").ToArray();
        IEnumerable<MapEntry> kept = map.Entries.Where(entry => !own.Any(over => over.Key == entry.Key));
        return new LubricantReader(new MapNode(map.Place, map.Path, [.. kept, .. own]), problems).Lubricant();
    }

    private static MapNode? Fields(string path, ProblemList problems)
    {
        MapNode? map = Inheritance.Read(path, problems);
        return map == null || FileSort.IsOther(map, FileKeys.Lubricant, problems) ? null : map;
    }

    private LubricantDescription? Lubricant()
    {
        if (!_file.Has("lubricant"))
            _file.Missing("lubricant", "write its name, for instance 'NLGI 1' or 'ISO VG 220'");
        if (!_file.Has("kind"))
            _file.Missing("kind", $"write one of: {string.Join(", ", Kinds)}");
        string name = _file.Text("lubricant") ?? "";
        SourcedValue? density = SourcedReader.Need(_file, "density", LubricantRanges.Density);
        SourcedValue? expansion = SourcedReader.Need(_file, "expansion", LubricantRanges.Expansion);
        SourcedValue? modulus = SourcedReader.Need(_file, "bulk-modulus", LubricantRanges.BulkModulus);
        LubricantDescription? lubricant = _file.Choice("kind", Kinds) switch
        {
            0 => Grease(name, density, expansion, modulus),
            1 => Oil(name, density, expansion, modulus),
            _ => null,
        };
        return lubricant == null || _problems.Count > _before ? null : Judged(lubricant);
    }

    private LubricantDescription? Judged(LubricantDescription lubricant)
    {
        IReadOnlyList<PlantFinding> findings = LubricantCheck.Of(lubricant);
        foreach (PlantFinding finding in findings)
            _problems.Add(LubricantFindings.Tell(_file, finding));
        return findings.Count > 0 ? null : lubricant;
    }

    private OilDescription? Oil(string name, SourcedValue? density, SourcedValue? expansion, SourcedValue? modulus)
    {
        RefuseForeign(LubricantKeys.Oil);
        double? grade = _file.Quantity("iso-viscosity-grade", LubricantRanges.Grade)?.Si;
        ViscosityDescription? viscosity = Viscosity(_file);
        return density == null || expansion == null || modulus == null || viscosity == null ? null : new OilDescription
        {
            Name = name,
            DensityKgPerM3 = density,
            ExpansionPerK = expansion,
            BulkModulusPa = modulus,
            IsoViscosityGrade = grade,
            Viscosity = viscosity,
        };
    }

    private GreaseDescription? Grease(string name, SourcedValue? density, SourcedValue? expansion, SourcedValue? modulus)
    {
        RefuseForeign(LubricantKeys.Grease);
        string? grade = _file.Text("nlgi-grade");
        SourcedValue? yieldStress = SourcedReader.Need(_file, "yield-stress", LubricantRanges.YieldStress);
        SourcedValue? consistency = SourcedReader.Need(_file, "consistency", LubricantRanges.Consistency);
        SourcedValue? index = SourcedReader.Need(_file, "flow-index", LubricantRanges.FlowIndex);
        SourcedValue yieldCoefficient = SourcedReader.Maybe(_file, "yield-coefficient", LubricantRanges.Coefficient) ?? GreaseDescription.AssumedYieldCoefficientPerK;
        SourcedValue? coefficient = SourcedReader.Maybe(_file, "consistency-coefficient", LubricantRanges.Coefficient);
        ViscosityDescription? baseOil = _file.Group("base-oil", LubricantKeys.BaseOil) is { } oil ? Viscosity(oil) : null;
        if (density == null || expansion == null || modulus == null || yieldStress == null || consistency == null || index == null)
            return null;
        return new GreaseDescription
        {
            Name = name,
            DensityKgPerM3 = density,
            ExpansionPerK = expansion,
            BulkModulusPa = modulus,
            NlgiGrade = grade,
            YieldStressPa = yieldStress,
            ConsistencyPaSn = consistency,
            FlowIndex = index,
            YieldCoefficientPerK = yieldCoefficient,
            ConsistencyCoefficientPerK = coefficient,
            BaseOil = baseOil,
        };
    }

    private static ViscosityDescription? Viscosity(MapReader group)
    {
        SourcedValue? at40 = SourcedReader.Need(group, "viscosity-at-40", LubricantRanges.Viscosity40);
        SourcedValue? slope = SourcedReader.Maybe(group, "viscosity-slope", LubricantRanges.Slope);
        SourcedValue? second = null;
        double? temperatureK = null;
        if (group.Group("second-viscosity", LubricantKeys.Second) is { } point)
        {
            second = SourcedReader.Of(point, LubricantRanges.SecondViscosity);
            temperatureK = point.Quantity("temperature", LubricantRanges.SecondTemperature)?.Si;
        }

        if (at40 == null)
            return null;
        var viscosity = new ViscosityDescription { At40M2PerS = at40, SecondM2PerS = second, Slope = slope };
        return temperatureK is { } kelvin ? viscosity with { SecondTemperatureK = kelvin } : viscosity;
    }

    private void RefuseForeign(KeySet own)
    {
        foreach (MapEntry entry in _file.Map.Entries.Where(entry => FileKeys.Lubricant.Has(entry.Key) && !own.Has(entry.Key)))
            _problems.Add(new Problem(entry.KeyPlace, _file.Field(entry.Key), entry.Value.Shown, $"{own.Name} has no '{entry.Key}'", $"its fields are {NearestName.Some(own.Keys)}"));
    }
}
