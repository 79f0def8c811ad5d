using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using LubeController.Core;
using Xunit;

namespace LubeController.Firmware.Tests;

/// <summary>The one class that may divide by a variable earns it: no operands whatever make it throw.</summary>
public sealed class SafeDivideTests
{
    private static readonly long[] Extremes = [long.MinValue, int.MinValue, -2, -1, 0, 1, 2, int.MaxValue, uint.MaxValue, long.MaxValue];

    [Fact]
    public void No_operands_make_it_throw()
    {
        Assert.Equal(FirmwareSubset.DivisionGuard, typeof(SafeDivide).FullName);
        MethodInfo[] methods = typeof(SafeDivide).GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly);
        Assert.NotEmpty(methods);
        foreach (MethodInfo method in methods)
        {
            List<object[]> rows = Operands(method.GetParameters()).ToList();
            Assert.True(rows.Count >= 25, $"{method} takes operands of a type that this test does not know: add it to {nameof(Fits)}");
            Assert.All(rows, operands => Assert.Null(Record.Exception(() => method.Invoke(null, operands))));
        }
    }

    private static IEnumerable<object[]> Operands(ParameterInfo[] parameters) => parameters.Aggregate(
        (IEnumerable<object[]>)[[]],
        (rows, parameter) => rows.SelectMany(row => Extremes.Where(value => Fits(value, parameter.ParameterType))
            .Select(value => row.Append(Convert.ChangeType(value, parameter.ParameterType, null)).ToArray())));

    private static bool Fits(long value, Type type) => type == typeof(int) ? value == (int)value
        : type == typeof(uint) ? value == (uint)value
        : type == typeof(long);
}
