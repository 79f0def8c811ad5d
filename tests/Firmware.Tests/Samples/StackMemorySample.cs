namespace LubeController.Firmware.Tests.Samples;

/// <summary>Memory from the stack, and fixed buffers.</summary>
public static class StackMemorySample
{
    public sealed class Stackalloc
    {
        public static unsafe int First(int count)
        {
            int* values = stackalloc int[count];
            return values[0];
        }
    }

    public unsafe struct FixedBuffer
    {
        public fixed int Values[4];
    }

    public sealed class Good
    {
        public int[] Values = new int[4];
    }
}
