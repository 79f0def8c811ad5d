using System.Collections.Generic;
using LubeController.Plant.Injectors;
using LubeController.Scripts.Reading;

namespace LubeController.Scripts.PlantFiles;

/// <summary>Reads the injectors of a plant file.</summary>
internal sealed class InjectorReader(MapReader file)
{
    private const int MostInjectors = 64;
    private const int MostSegments = 16;

    /// <summary>The injectors; none where none are written.</summary>
    public IReadOnlyList<InjectorDescription> Read()
    {
        var injectors = new List<InjectorDescription>();
        foreach (MapReader group in file.Groups("injectors", PlantKeys.Injector, MostInjectors))
        {
            var plain = new InjectorDescription { Name = "", Outlet = "", VolumeM3 = double.NaN, DischargePa = double.NaN, RechargePa = double.NaN };
            injectors.Add(plain with
            {
                Name = PlantNames.Need(group, "name", "i1"),
                Outlet = PlantNames.Need(group, "outlet", "drive-end-bearing"),
                VolumeM3 = PlantReader.Need(group, "volume", PlantRanges.Stroked),
                DischargePa = PlantReader.Need(group, "discharge", PlantRanges.Discharge),
                RechargePa = PlantReader.Need(group, "recharge", PlantRanges.Trip),
                RechargeS = group.Quantity("recharge-time", PlantRanges.RechargeTime)?.Si ?? plain.RechargeS,
                Segment = (int)(group.Whole("segment", 0, MostSegments) ?? plain.Segment),
            });
        }

        return injectors;
    }
}
