using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Divider;
using LubeController.Plant.Fields;
using LubeController.Plant.Outlets;

namespace LubeController.Plant.Description;

/// <summary>
/// The outlets of a plant. Where none are written there is one for each group of connected ports, named for its first port;
/// those that injectors feed must be written.
/// </summary>
public sealed class OutletsField() : Field<PlantDescription>("outlets", "One for each group of connected ports; with injectors those that they feed."), IListField
{
    /// <inheritdoc/>
    public FieldSet Set => OutletFields.AtPorts;

    /// <inheritdoc/>
    public int Least => 0;

    /// <inheritdoc/>
    public int Most => OutletFields.Most;

    /// <inheritdoc/>
    public override PlantDescription Read(IFieldSource source, PlantDescription into)
    {
        bool injectors = source.Has(PlantFields.InjectorsKey) && !source.Has(PlantFields.Divider.Key);
        if (source.Has(Key))
        {
            FieldSet<OutletDescription> set = injectors ? OutletFields.AtInjector : OutletFields.AtPorts;
            return into with { Outlets = [.. source.Items(Key, set, Most).Select(set.Read).OfType<OutletDescription>()] };
        }

        if (injectors)
            source.Missing(this);
        return into with { Outlets = [.. into.Secondaries.Select(secondary => secondary.Divider).Prepend(into.Divider).SelectMany(PortGroups.DefaultOutlets)] };
    }

    internal override void Check(Findings findings, string group, PlantDescription item)
    {
        for (int index = 0; index < item.Outlets.Count; index++)
            OutletFields.AtPorts.Check(findings, $"{Below(group)}[{index}]", item.Outlets[index]);
    }

    internal override string Shown(PlantDescription item) => Findings.Show(item.Outlets.Count);
}
