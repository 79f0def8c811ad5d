using System.Collections.Generic;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Injectors;

namespace LubeController.Files.PlantFiles;

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
                VolumeM3 = group.Need("volume", PlantRanges.Stroked),
                DischargePa = group.Need("discharge", PlantRanges.Discharge),
                RechargePa = group.Need("recharge", PlantRanges.Trip),
                RechargeS = group.Quantity("recharge-time", PlantRanges.RechargeTime)?.Si ?? plain.RechargeS,
                Segment = (int)(group.Whole("segment", 0, MostSegments) ?? plain.Segment),
            });
        }

        return injectors;
    }
}
