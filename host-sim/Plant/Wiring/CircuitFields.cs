using System;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Wiring;

/// <summary>Fields that most parts of a circuit have.</summary>
internal static class CircuitFields
{
    internal static TextField<T> Name<T>(Func<T, string?> get, Func<T, string, T> with) => new("name", "", TextForm.Name, "W1", get, with) { Required = true };

    internal static TextField<T> Terminal<T>(string key, Func<T, string?> get, Func<T, string, T> with, string meaning = "") =>
        new(key, meaning, TextForm.Terminal, "X1-2", get, with) { Required = true };

    internal static NumberField<T> Ohms<T>(string meaning, double least, double most, Func<T, double?> get, Func<T, double, T> with, bool required = false) =>
        new("resistance", meaning, Measure.Resistance, "ohm", least, most, get, with) { Required = required };
}
