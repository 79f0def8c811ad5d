using System.Collections.Generic;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Scan;

/// <summary>The few members of the core library that a scan may call: on both runtimes they only read what is there.</summary>
public static class CoreLibraryCalls
{
    private static readonly HashSet<string> Known =
    [
        "System.String.get_Length",
        "System.String.get_Chars",
    ];

    /// <summary>Whether a member is one of them.</summary>
    public static bool AllocateNothing(MethodReference method) => Known.Contains(Il.Short(method));
}
