using System;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Reservoir;

/// <summary>The fields of a reservoir.</summary>
public static class ReservoirFields
{
    private static readonly NumberField<ReservoirDescription> Content = Volume("content", "Content at the start.", r => r.ContentM3, (r, v) => r with { ContentM3 = v }, required: true);
    private static readonly NumberField<ReservoirDescription> LowLevel = Volume("low-level", "The low switch is actuated at and below this content.", r => r.LowLevelM3, (r, v) => r with { LowLevelM3 = v }, required: true);
    private static readonly NumberField<ReservoirDescription> EmptyLevel = Volume("empty-level", "The empty switch is actuated at and below this content.", r => r.EmptyLevelM3, (r, v) => r with { EmptyLevelM3 = v }, required: true);
    private static readonly NumberField<ReservoirDescription> Hysteresis = Volume("level-hysteresis", "Rise above its level at which a level switch releases.", r => r.LevelHysteresisM3, (r, v) => r with { LevelHysteresisM3 = v });
    private static readonly NumberField<ReservoirDescription> AeratesBelow = Volume("aerates-below", "Below this content the pump draws air too: none at it, all air at nothing.", r => r.AeratesBelowM3, (r, v) => r with { AeratesBelowM3 = v });

    /// <summary>All of them.</summary>
    public static FieldSet<ReservoirDescription> All { get; } = new(
        "a reservoir",
        new ReservoirDescription { CapacityM3 = double.NaN, ContentM3 = double.NaN, LowLevelM3 = double.NaN, EmptyLevelM3 = double.NaN },
        new NumberField<ReservoirDescription>("capacity", "Volume that it holds when full.", Measure.Volume, "l", 1e-5, 10, r => r.CapacityM3, (r, v) => r with { CapacityM3 = v }) { Required = true },
        Content,
        LowLevel,
        EmptyLevel,
        Hysteresis,
        AeratesBelow,
        new NumberField<ReservoirDescription>("entrained-air", "Air finely spread in the lubricant, share of its volume at atmosphere.", Measure.Ratio, "%", 0, 0.2, r => r.EntrainedAir, (r, v) => r with { EntrainedAir = v }),
        new ChoiceField<ReservoirDescription, SwitchContact>("low-contact", "Contact of the low switch.", ContactWords.Switches, r => r.LowContact, (r, v) => r with { LowContact = v }),
        new ChoiceField<ReservoirDescription, SwitchContact>("empty-contact", "Contact of the empty switch.", ContactWords.Switches, r => r.EmptyContact, (r, v) => r with { EmptyContact = v }))
    {
        Rules =
        [
            UpTo(Content, r => r.ContentM3, r => r.CapacityM3, "the capacity"),
            new(Content, r => r.ContentM3 > r.LowLevelM3, r => "more than the low level, or the low switch is on from the start") { IsWarning = true },
            UpTo(EmptyLevel, r => r.EmptyLevelM3, r => r.LowLevelM3, "the low level"),
            UpTo(LowLevel, r => r.LowLevelM3, r => r.CapacityM3, "the capacity"),
            UpTo(Hysteresis, r => r.LevelHysteresisM3, r => r.CapacityM3 / 2, "half the capacity"),
            UpTo(AeratesBelow, r => r.AeratesBelowM3, r => r.CapacityM3, "the capacity"),
        ],
    };

    private static NumberField<ReservoirDescription> Volume(string key, string meaning, Func<ReservoirDescription, double?> get, Func<ReservoirDescription, double, ReservoirDescription> with, bool required = false) =>
        new(key, meaning, Measure.Volume, "l", 0, 10, get, with) { Required = required };

    private static Rule<ReservoirDescription> UpTo(Field<ReservoirDescription> field, Func<ReservoirDescription, double> value, Func<ReservoirDescription, double> most, string what) =>
        new(field, r => value(r) <= most(r), r => $"0 to {Findings.Show(most(r))} m3 ({what})");
}
