using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Outlets;

/// <summary>The ports of an outlet, each a section's name with L or R. Whether they are there and connected, the plant's check says.</summary>
public sealed class PortsField() : Field<OutletDescription>(Name, "At least one port of the group; absent where an injector feeds the outlet.")
{
    internal const string Name = "ports";

    /// <summary>Whether an injector feeds the outlet.</summary>
    public bool AreRefused { get; init; }

    /// <inheritdoc/>
    public override OutletDescription Read(IFieldSource source, OutletDescription into)
    {
        if (AreRefused && source.Has(Key))
            source.Refuse(Key, "an outlet that an injector feeds has no ports", "delete the field; the injector names the outlet");
        if (AreRefused)
            return into;
        if (!source.Has(Key))
            source.Missing(this);
        IReadOnlyList<string> ports = source.Texts(this, OutletFields.Most, IsPort, "a port is a section's name with L or R", "write for instance 2L");
        return into with { Ports = [.. ports.Select(port => new PortDescription(port[..^1], port[^1] == 'L' ? Side.L : Side.R))] };
    }

    internal override void Check(Findings findings, string group, OutletDescription item)
    {
    }

    internal override string Shown(OutletDescription item) => string.Join(", ", item.Ports);

    private static bool IsPort(string text) => text.Length > 1 && text[^1] is 'L' or 'R' && TextForms.IsName(text);
}
