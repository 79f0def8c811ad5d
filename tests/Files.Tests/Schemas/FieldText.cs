using System.Globalization;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Plant.Fields;

namespace LubeController.Files.Tests.Schemas;

/// <summary>A field's range and preset as people write them.</summary>
internal static class FieldText
{
    public static string Range(Field field) => field switch
    {
        INumberField number => $"{QuantityRange.Of(number)}",
        IWholeField whole => string.Create(CultureInfo.InvariantCulture, $"{whole.Least} to {whole.Most}"),
        IChoiceField choice => string.Join(", ", choice.Words),
        ITextField { Form: TextForm.Name } => "a name",
        ITextField { Form: TextForm.Terminal } => "a terminal",
        IListField { Least: > 0 } list => $"{list.Least} to {list.Most}, each {list.Set.Name}",
        IListField list => $"up to {list.Most}, each {list.Set.Name}",
        IGroupField { MayBeYesOrNo: true } group => $"yes, no, or {group.Set.Name}",
        IGroupField group => group.Set.Name,
        _ => "a text",
    };

    /// <summary>What holds where the field is not written; empty where it must be.</summary>
    public static string Preset(Field field) => field.Required ? "" : field.Absent ?? field switch
    {
        INumberField { Preset: { } value } number when double.IsFinite(value) => Number(number, value),
        IWholeField whole => whole.Preset.ToString(CultureInfo.InvariantCulture),
        IChoiceField choice => choice.PresetWord ?? "none",
        ITextField text => text.Preset ?? "none",
        _ => "none",
    };

    public static string Description(Field field)
    {
        string bounds = field is INumberField or IWholeField ? $"From {Range(field)}" : "";
        string preset = Preset(field).Length == 0 ? "" : field.Absent is { } absent ? $"{absent.TrimEnd(',')} if not written" : field is IGroupField or IListField ? "" : $"{Preset(field)} if not written";
        string facts = string.Join("; ", new[] { bounds, preset }.Where(part => part.Length > 0));
        return string.Join(" ", new[] { field.Meaning, facts.Length > 0 ? facts + "." : "" }.Where(part => part.Length > 0));
    }

    private static string Number(INumberField number, double si)
    {
        UnitFamily family = UnitFamily.Of(number.Measure);
        return new Quantity(family.ShownFromSi(si, number.Unit), number.Unit, family).ToString();
    }
}
